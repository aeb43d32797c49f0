import { signal } from '@lit-labs/signals'
import type { Store } from '../storage/index.ts'
import type { Worksheet } from '../worksheet/index.ts'

export type Keeping =
  | { readonly state: 'untouched' }
  | { readonly state: 'keeping' }
  | { readonly state: 'kept'; readonly at: Date }
  | { readonly state: 'failed'; readonly message: string }

const PAUSE_MS = 300

/** Keeps one worksheet as it is typed: a little after the last key, and at once when the page is left. */
export class Keeper {
  readonly keeping = signal<Keeping>({ state: 'untouched' })
  private timer: ReturnType<typeof setTimeout> | undefined
  private latest: (() => Worksheet) | undefined
  private writing: Promise<void> = Promise.resolve()
  private readonly store: Store
  readonly id: string

  constructor(store: Store, id: string, last?: Date) {
    if (last) this.keeping.set({ state: 'kept', at: last })
    this.store = store
    this.id = id
    document.addEventListener('visibilitychange', this.leave)
    addEventListener('pagehide', this.leave)
  }

  /** Keeps what `worksheet` gives when the time has come. */
  keep(worksheet: () => Worksheet): void {
    this.latest = worksheet
    this.keeping.set({ state: 'keeping' })
    clearTimeout(this.timer)
    this.timer = setTimeout(() => void this.flush(), PAUSE_MS)
  }

  /** Writes what is not yet written; resolves when it is. */
  flush(): Promise<void> {
    clearTimeout(this.timer)
    const latest = this.latest
    this.latest = undefined
    if (latest) this.writing = this.writing.then(() => this.write(latest()))
    return this.writing
  }

  async close(): Promise<void> {
    document.removeEventListener('visibilitychange', this.leave)
    removeEventListener('pagehide', this.leave)
    await this.flush()
  }

  private readonly leave = (): void => {
    if (document.visibilityState === 'hidden' || this.latest) void this.flush()
  }

  private async write(worksheet: Worksheet): Promise<void> {
    try {
      const at = new Date(await this.store.save(this.id, worksheet))
      // Where nothing outlives the tab, it would be untrue to say it was kept.
      const next: Keeping = this.store.kept
        ? { state: 'kept', at }
        : { state: 'failed', message: this.store.trouble?.message ?? 'Nothing is kept in this browser.' }
      if (!this.latest) this.keeping.set(next)
    } catch (error) {
      this.keeping.set({ state: 'failed', message: (error as Error).message })
    }
  }
}
