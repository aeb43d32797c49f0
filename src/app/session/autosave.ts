import { signal } from '@lit-labs/signals'
import { askToPersist } from '../../storage/store/persistence.ts'
import { StoreError } from '../../storage/store/store-error.ts'
import { changesOf } from '../../storage/store/summary.ts'
import type { Store, Summary } from '../../storage/store/types.ts'
import type { Worksheet } from '../../worksheet/index.ts'

export type SaveState =
  | { readonly state: 'untouched' }
  | { readonly state: 'saving' }
  | { readonly state: 'saved'; readonly at: Date }
  | { readonly state: 'failed'; readonly message: string }

const PAUSE_MS = 300
/** Whoever types on without a pause is kept this often all the same. */
const LONGEST_MS = 1000

interface Told {
  /** A change is on the disk. */
  readonly kept?: () => void
  /** Another tab has changed the sheet since: this could not be kept. */
  readonly refused?: (worksheet: Worksheet) => void
}

/** Keeps one worksheet as it is typed: a little after the last key, and at once when the page is left. */
export class Autosave {
  readonly saveState = signal<SaveState>({ state: 'untouched' })
  private timer: ReturnType<typeof setTimeout> | undefined
  private since = 0
  private latest: (() => Worksheet) | undefined
  private writing: Promise<void> = Promise.resolve()
  private hasAsked = false
  /** The count of changes this tab has seen; the store refuses to write over any other. */
  private seen: number

  constructor(
    private readonly store: Store,
    readonly id: string,
    kept?: Summary,
    private readonly told: Told = {},
  ) {
    if (kept) this.saveState.set({ state: 'saved', at: new Date(kept.changed) })
    this.seen = changesOf(kept)
    document.addEventListener('visibilitychange', this.leave)
    addEventListener('pagehide', this.leave)
    addEventListener('beforeunload', this.warn)
  }

  /** Keeps what `worksheet` gives when the time has come. */
  schedule(worksheet: () => Worksheet): void {
    const now = performance.now()
    if (!this.latest) this.since = now
    this.latest = worksheet
    this.saveState.set({ state: 'saving' })
    clearTimeout(this.timer)
    const wait = Math.min(PAUSE_MS, Math.max(0, this.since + LONGEST_MS - now))
    this.timer = setTimeout(() => void this.flush(), wait)
  }

  /** Writes what is not yet written; resolves when it is. */
  flush(): Promise<void> {
    clearTimeout(this.timer)
    const latest = this.latest
    this.latest = undefined
    if (latest) this.writing = this.writing.then(() => this.write(latest()))
    return this.writing
  }

  /** Goes on from what is kept now, where another tab has changed it. */
  resume(kept: Summary): void {
    this.seen = changesOf(kept)
    this.saveState.set({ state: 'saved', at: new Date(kept.changed) })
  }

  async close(): Promise<void> {
    document.removeEventListener('visibilitychange', this.leave)
    removeEventListener('pagehide', this.leave)
    removeEventListener('beforeunload', this.warn)
    await this.flush()
  }

  private readonly leave = (): void => {
    if (document.visibilityState === 'hidden' || this.latest) void this.flush()
  }

  /** The browser asks before it closes a page whose sheet is nowhere else. */
  private readonly warn = (event: BeforeUnloadEvent): void => {
    if (this.saveState.get().state === 'failed') event.preventDefault()
  }

  private async write(worksheet: Worksheet): Promise<void> {
    try {
      const summary = await this.store.save(this.id, worksheet, this.seen)
      this.seen = changesOf(summary)
      // Where nothing outlives the tab, it would be untrue to say it was kept.
      const next: SaveState = this.store.persistent
        ? { state: 'saved', at: new Date(summary.changed) }
        : { state: 'failed', message: this.store.problem?.message ?? 'Nothing is kept in this browser.' }
      if (!this.latest) this.saveState.set(next)
      if (!this.hasAsked) void askToPersist(this.store)
      this.hasAsked = true
      this.told.kept?.()
    } catch (error) {
      this.saveState.set({ state: 'failed', message: (error as Error).message })
      if (error instanceof StoreError && error.problem === 'elsewhere') this.told.refused?.(worksheet)
    }
  }
}
