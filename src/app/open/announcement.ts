import type { ReactiveController, ReactiveControllerHost } from 'lit'

/** How long typing has paused before a state is announced. */
const PAUSE_MS = 900

/** Announces a state that follows from what is typed: once it has changed and typing has paused, not at every key. */
export class Announcement implements ReactiveController {
  /** What is announced. */
  text = ''
  private last = ''
  /** What was done, and is announced along with the state that follows. */
  private done = ''
  private waiting: ReturnType<typeof setTimeout> | undefined

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this)
  }

  hostDisconnected(): void {
    clearTimeout(this.waiting)
  }

  /** Has the next state announced even if it is the same, after what was done; called before what renders the host anew. */
  after(done: string): void {
    this.done = done
    this.text = ''
  }

  state(words: string): void {
    if (words === this.last && this.done === '') return
    this.last = words
    clearTimeout(this.waiting)
    this.waiting = setTimeout(() => {
      this.text = this.done + words
      this.done = ''
      this.host.requestUpdate()
    }, PAUSE_MS)
  }
}
