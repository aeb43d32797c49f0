/** Whether this tab holds a sheet: only who holds it may change it. */
export type LockState =
  | 'here'
  /** It was open in another tab when it was opened here. */
  | 'elsewhere'
  /** Another tab took it over. */
  | 'taken'
  /** Another tab changed it without asking: this browser has no locks, or this tab slept. */
  | 'changed'

interface Said {
  readonly sheet: string
  readonly says: 'give it to me' | 'it is kept'
}

/** How long a tab that holds a sheet may take to write what was typed and let go; one asleep never answers. */
const PATIENCE_MS = 2000
/** How long a page being reloaded may take to let go of what it held. */
const RELOAD_MS = 400

const CHANNEL = 'evenfield'

/**
 * The hold of this tab on one sheet, by a lock all tabs of the browser share. It keeps two tabs from typing into one
 * sheet unawares; that neither writes over the other is the store's own guard, which counts changes.
 */
export class TabLock {
  private readonly channel: BroadcastChannel | undefined
  private release: (() => void) | undefined
  private waiting: AbortController | undefined

  constructor(
    private readonly id: string,
    private readonly told: {
      /** The sheet has come to this tab, at last. */
      readonly gained: () => void
      /** Another tab asks for the sheet: write what is not yet written. */
      readonly asked: () => Promise<unknown>
      /** The hold is gone. */
      readonly lost: () => void
      /** Another tab has kept a change of the sheet. */
      readonly keptElsewhere: () => void
    },
  ) {
    this.channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel(CHANNEL) : undefined
    this.channel?.addEventListener('message', this.hear)
  }

  get isHeld(): boolean {
    return this.release !== undefined
  }

  /** Takes the sheet where no other tab has it; else takes it once that one closes. */
  async take(): Promise<boolean> {
    // Asked first without waiting: on a slow machine the answer itself may take longer than a page being reloaded.
    if (await this.request({ ifAvailable: true })) return true
    if (await this.request({ signal: AbortSignal.timeout(RELOAD_MS) })) return true
    this.wait()
    return false
  }

  /** Asks the tab that has the sheet for it; takes it from one that does not answer. */
  async takeOver(): Promise<void> {
    this.waiting?.abort()
    if (this.isHeld) return
    this.say('give it to me')
    if (await this.request({ signal: AbortSignal.timeout(PATIENCE_MS) })) return
    await this.request({ steal: true })
  }

  /** Tells the other tabs that a change has been kept. */
  kept(): void {
    this.say('it is kept')
  }

  close(): void {
    this.channel?.close()
    this.waiting?.abort()
    this.letGo()
  }

  private wait(): void {
    const waiting = new AbortController()
    this.waiting = waiting
    void this.request({ signal: waiting.signal }).then((isMine) => isMine && this.told.gained())
  }

  private lost(): void {
    this.told.lost()
    this.wait()
  }

  private letGo(): void {
    this.release?.()
    this.release = undefined
  }

  private say(says: Said['says']): void {
    this.channel?.postMessage({ sheet: this.id, says } satisfies Said)
  }

  private readonly hear = async ({ data }: MessageEvent<Said>): Promise<void> => {
    if (data.sheet !== this.id) return
    if (data.says === 'it is kept') return this.told.keptElsewhere()
    if (!this.isHeld) return
    // A store that fails has told so already; the hold goes all the same, or the sheet would be stuck here.
    await this.told.asked().catch(() => {})
    this.letGo()
    this.lost()
  }

  private request(how: LockOptions): Promise<boolean> {
    // Without locks (a page from another machine without https) every tab may write, and the store's guard decides.
    if (!('locks' in navigator)) {
      this.release = () => {}
      return Promise.resolve(true)
    }
    return new Promise((settle) => {
      let isMine = false
      navigator.locks
        .request(`evenfield sheet ${this.id}`, how, (lock) => {
          settle(lock !== null)
          if (lock === null) return
          isMine = true
          return new Promise<void>((release) => {
            this.release = release
          })
        })
        .catch(() => {
          // Given up waiting for it, or taken from us.
          settle(false)
          if (!isMine || !this.isHeld) return
          this.release = undefined
          this.lost()
        })
    })
  }
}
