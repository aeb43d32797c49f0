import { newId } from './new-id.ts'

/** Whether this tab may change a sheet. */
export type LockState =
  | 'here'
  /** It was open in another tab when it was opened here. */
  | 'elsewhere'
  /** Another tab took it over. */
  | 'taken'
  /** Another tab changed it without asking: this browser has no locks, or this tab slept. */
  | 'changed'

interface Message {
  readonly sheet: string
  readonly from: string
  readonly says: 'hand it over' | 'handed over' | 'saved'
}

/** How long a tab that has a sheet may take to write what was typed and answer; one asleep never does. */
const ANSWER_LIMIT_MS = 2000
/** How long a page being reloaded may take to give up its lock. */
const RELOAD_MS = 400

const CHANNEL = 'evenfield'

export interface TabLockEvents {
  /** This tab has the sheet after waiting. */
  readonly gained: () => void
  /** Another tab asks for the sheet: write what is not yet written. */
  readonly asked: () => Promise<unknown>
  /** The lock is gone. */
  readonly lost: () => void
  /** Another tab has saved a change of the sheet. */
  readonly savedElsewhere: () => void
}

/** What a lock works with: the browser's own, where there are. */
export interface TabLockMeans {
  readonly locks: LockManager | undefined
  readonly channel: BroadcastChannel | undefined
}

/** Tells every tab, this one too, that a sheet was saved by a page that has no lock on it. */
export function tellSaved(sheet: string): void {
  const channel = new BroadcastChannel(CHANNEL)
  channel.postMessage({ sheet, from: newId(), says: 'saved' } satisfies Message)
  channel.close()
}

const browserMeans = (): TabLockMeans => ({
  locks: globalThis.navigator?.locks as LockManager | undefined,
  channel: 'BroadcastChannel' in globalThis ? new BroadcastChannel(CHANNEL) : undefined,
})

/**
 * The lock of this tab on one sheet, shared by all tabs of the browser. It prevents two tabs from editing one sheet
 * unawares; that neither writes over the other is ensured by the store, which compares states.
 */
export class TabLock {
  private readonly me = newId()
  private release: (() => void) | undefined
  private waiting: AbortController | undefined
  private answered: (() => void) | undefined

  constructor(
    private readonly id: string,
    private readonly events: TabLockEvents,
    private readonly means: TabLockMeans = browserMeans(),
  ) {
    this.means.channel?.addEventListener('message', this.hear)
  }

  get isHeld(): boolean {
    return this.release !== undefined
  }

  /** Takes the sheet where no other tab has it; else it comes once that tab closes. */
  async take(): Promise<boolean> {
    // First without waiting: on a slow machine the answer itself may take longer than a page being reloaded.
    if (await this.request({ ifAvailable: true })) return true
    const patience = new AbortController()
    const over = setTimeout(() => patience.abort(), RELOAD_MS)
    if (await this.request({ signal: patience.signal }).finally(() => clearTimeout(over))) return true
    this.wait()
    return false
  }

  /**
   * Takes the sheet over once the tab that has it has written what was typed, or does not answer. The lock is taken,
   * not waited for: of several tabs that wait, the one that asked gets it.
   */
  async takeOver(): Promise<void> {
    if (this.isHeld) return
    this.waiting?.abort()
    await this.askForIt()
    await this.request({ steal: true })
  }

  /** Tells the other tabs that a change has been saved. */
  saved(): void {
    this.say('saved')
  }

  close(): void {
    this.means.channel?.removeEventListener('message', this.hear)
    this.means.channel?.close()
    this.waiting?.abort()
    this.letGo()
  }

  private askForIt(): Promise<void> {
    const { channel } = this.means
    if (!channel) return Promise.resolve()
    return new Promise((settle) => {
      const limit = setTimeout(settle, ANSWER_LIMIT_MS)
      this.answered = () => {
        clearTimeout(limit)
        settle()
      }
      this.say('hand it over')
    })
  }

  private wait(): void {
    if (!this.means.locks) return
    const waiting = new AbortController()
    this.waiting = waiting
    void this.request({ signal: waiting.signal }).then((isMine) => isMine && this.events.gained())
  }

  private lost(): void {
    this.events.lost()
    this.wait()
  }

  private letGo(): void {
    this.release?.()
    this.release = undefined
  }

  private say(says: Message['says']): void {
    this.means.channel?.postMessage({ sheet: this.id, from: this.me, says } satisfies Message)
  }

  private readonly hear = async ({ data }: MessageEvent<Message>): Promise<void> => {
    if (data.sheet !== this.id) return
    if (data.says === 'saved') return this.events.savedElsewhere()
    if (data.says === 'handed over') return this.answered?.()
    if (!this.isHeld) return
    // A store that fails says so itself; the sheet is handed over all the same, or it would be stuck here.
    await this.events.asked().catch(() => {})
    this.say('handed over')
    if (this.means.locks) return
    this.letGo()
    this.lost()
  }

  private request(how: LockOptions): Promise<boolean> {
    const { locks } = this.means
    // Without locks (a page from another machine without https) every tab may write, and the store decides.
    if (!locks) {
      this.release = () => {}
      return Promise.resolve(true)
    }
    return new Promise((settle) => {
      let isMine = false
      let mine: (() => void) | undefined
      locks
        .request(`evenfield sheet ${this.id}`, how, (lock) => {
          settle(lock !== null)
          if (lock === null) return
          isMine = true
          return new Promise<void>((release) => {
            mine = release
            this.release = release
          })
        })
        .catch(() => {
          // The wait was given up, or another tab has taken the lock.
          settle(false)
          if (!isMine || this.release !== mine) return
          this.release = undefined
          this.lost()
        })
    })
  }
}
