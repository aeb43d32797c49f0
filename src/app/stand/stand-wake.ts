import { signal } from '@lit-labs/signals'
import { standWords } from './words.ts'

/** Whether the screen stays on: kept on, asked for, refused for now, or not available in this browser. */
export type WakeState = 'held' | 'asked' | 'refused' | 'cannot'

export const WAKE_TEXT: Readonly<Record<WakeState, string>> = standWords.awake

/**
 * Keeps the screen on from `start` to `stop`, as far as the browser allows (W3C, Screen Wake Lock API). The browser
 * releases the lock whenever the page is hidden; it is requested again when the page becomes visible.
 */
export class StandWake {
  readonly waking = signal<WakeState>('asked')
  private lock: WakeLockSentinel | undefined
  private started = false
  private asking = false

  start(): void {
    this.started = true
    document.addEventListener('visibilitychange', this.seen)
    // Some browsers grant the lock only after the page has been touched.
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
    // Older browsers and insecure pages do not have the interface.
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
      // The stand may have been left while the lock was requested.
      if (!this.started) this.letGo()
    } catch {
      this.waking.set('refused')
    } finally {
      this.asking = false
    }
  }

  /** The browser has released the lock by itself: the page is hidden, or the battery is low. */
  private released(lock: WakeLockSentinel): void {
    if (this.lock !== lock) return
    this.lock = undefined
    this.waking.set('refused')
    if (document.visibilityState === 'visible') void this.ask()
  }
}
