import { signal } from '@lit-labs/signals'

/** Whether the screen is kept from going dark: held, asked for, refused for now, or not to be had in this browser. */
export type WakeState = 'held' | 'asked' | 'refused' | 'cannot'

export const WAKE_TEXT: Readonly<Record<WakeState, string>> = {
  held: 'The screen stays awake here.',
  asked: '',
  refused: 'The screen may go dark: the browser does not keep it awake now. A low battery is the usual reason.',
  cannot: 'The screen may go dark: this browser cannot keep it awake. Set the device itself to stay on.',
}

/**
 * Keeps the screen awake from `start` to `stop`, as far as the browser lets a page (W3C, Screen Wake Lock API). It lets
 * go whenever the page is hidden; the lock is asked for again when it is seen.
 */
export class StandWake {
  readonly waking = signal<WakeState>('asked')
  private lock: WakeLockSentinel | undefined
  private started = false
  private asking = false

  start(): void {
    this.started = true
    document.addEventListener('visibilitychange', this.seen)
    // Some browsers give it only to a page that has been touched.
    addEventListener('pointerup', this.touched)
    addEventListener('keyup', this.touched)
    void this.ask()
  }

  stop(): void {
    this.started = false
    document.removeEventListener('visibilitychange', this.seen)
    removeEventListener('pointerup', this.touched)
    removeEventListener('keyup', this.touched)
    this.letGo()
  }

  private letGo(): void {
    const { lock } = this
    this.lock = undefined
    void lock?.release().catch(() => {})
  }

  private readonly seen = (): void => {
    if (document.visibilityState === 'visible') void this.ask()
  }

  private readonly touched = (): void => {
    if (this.waking.get() === 'refused') void this.ask()
  }

  private async ask(): Promise<void> {
    if (this.asking || this.lock || !this.started) return
    // Older browsers and pages that are not secure have none.
    if (!('wakeLock' in navigator)) {
      this.waking.set('cannot')
      return
    }
    this.asking = true
    try {
      const lock = await navigator.wakeLock.request('screen')
      this.lock = lock
      lock.addEventListener('release', () => this.released(lock))
      this.waking.set('held')
      // Left while it was being asked for.
      if (!this.started) this.letGo()
    } catch {
      this.waking.set('refused')
    } finally {
      this.asking = false
    }
  }

  /** The browser has let go by itself: the page is hidden, or the battery low. */
  private released(lock: WakeLockSentinel): void {
    if (this.lock !== lock) return
    this.lock = undefined
    this.waking.set('refused')
    if (document.visibilityState === 'visible') void this.ask()
  }
}
