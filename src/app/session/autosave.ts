import { signal } from '@lit-labs/signals'
import { StoreError, type StoreProblem } from '../../storage/store/store-error.ts'
import { stateOf } from '../../storage/store/summary.ts'
import type { CheckCounts, Store, Summary } from '../../storage/store/types.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { sessionWords } from './words.ts'

export type SaveState =
  | { readonly state: 'untouched' }
  | { readonly state: 'saving' }
  /** The transaction is complete. */
  | { readonly state: 'saved'; readonly at: Date }
  /** It is tried again by itself. */
  | { readonly state: 'failed'; readonly message: string }
  /** Another tab's state stays in the store; what was typed here became the revision of this time. */
  | { readonly state: 'refused'; readonly revision: number }

/** What there is to be saved: the document, and its steps of undo as plain data. */
export interface Savable {
  readonly worksheet: Worksheet
  readonly history?: unknown
  /** How its checks are, for the list of sheets. */
  readonly checks?: CheckCounts | undefined
}

/** What is in no completed transaction, and the states of the sheet it goes on from. */
export interface Unsaved extends Savable {
  readonly seen: readonly string[]
}

export interface AutosaveEvents {
  /** A change is saved. */
  readonly saved?: () => void
  /** Another tab has changed the sheet since: this state could not be saved in its place. */
  readonly refused?: () => void
  /** A save was tried, successful or not. */
  readonly tried?: () => void
}

/** How long typing may pause before it is saved, in milliseconds. */
const PAUSE_MS = 300
/** Without a pause in typing it is saved this often all the same. */
const LONGEST_MS = 1000
/** After how long a failed save is tried again: the first time, the second, and from the last on each time. */
const RETRY_MS = [2_000, 5_000, 15_000, 30_000, 60_000] as const

/** What does not come right by trying the same again. */
const LASTING: ReadonlySet<StoreProblem> = new Set(['outdated', 'unwritable', 'refused'])

/**
 * Saves one worksheet as it is typed: a little after the last key, and at once when asked. A save that fails is tried
 * again until it succeeds, also after the sheet's page was left. “Saved” is only ever said after a completed transaction.
 */
export class Autosave {
  readonly saveState = signal<SaveState>({ state: 'untouched' })
  /** Of the session that has the sheet open at present. */
  events: AutosaveEvents = {}
  private timer: ReturnType<typeof setTimeout> | undefined
  private since = 0
  /** What is not yet written, or could not be. */
  private latest: (() => Savable) | undefined
  /** What is being written. */
  private underWay: (() => Savable) | undefined
  /** What could not be saved over another tab's state, until it is a revision. */
  private rescuing: Worksheet | undefined
  private writing: Promise<void> | undefined
  private failures = 0
  private hasAsked = false
  /** The states of the sheet this tab has seen; the store refuses to write over any other. */
  private seen: readonly string[] = []

  constructor(
    private readonly store: Store,
    readonly id: string,
    saved?: Summary,
  ) {
    if (saved) this.resume(saved)
  }

  /** Whether something typed here is in no completed transaction. */
  get isUnsaved(): boolean {
    return this.latest !== undefined || this.rescuing !== undefined || this.writing !== undefined || this.isHomeless
  }

  /** The sheet as it was typed, where it is not saved. */
  get unsaved(): Unsaved | undefined {
    const savable = (this.latest ?? this.underWay)?.() ?? (this.rescuing && { worksheet: this.rescuing })
    return savable && { ...savable, seen: this.seen }
  }

  /** The title of what was last to be saved. */
  title = ''

  /** Saves what `make` gives when the time has come. */
  schedule(make: () => Savable): void {
    const now = performance.now()
    if (!this.latest) this.since = now
    this.latest = make
    if (this.saveState.get().state !== 'failed') this.saveState.set({ state: 'saving' })
    this.wait(Math.min(PAUSE_MS, Math.max(0, this.since + LONGEST_MS - now)))
  }

  /** Writes what is not yet written; resolves when that was tried, and never rejects. */
  async flush(): Promise<void> {
    clearTimeout(this.timer)
    while (this.writing) await this.writing
    if (!this.latest && !this.rescuing) return
    const writing = this.write().finally(() => {
      if (this.writing === writing) this.writing = undefined
      this.events.tried?.()
    })
    this.writing = writing
    return writing
  }

  /** Goes on from what another page was left with. */
  take({ seen, ...savable }: Unsaved): void {
    this.seen = seen
    this.schedule(() => savable)
  }

  /** Goes on from a state read from the store. Only where nothing here is unsaved. */
  resume(saved: Summary): void {
    this.seen = [stateOf(saved)]
    this.saveState.set({ state: 'saved', at: new Date(saved.changed) })
  }

  /** Whether a state of the sheet is the one this tab goes on from. */
  hasSeen(saved: Summary): boolean {
    return this.seen.includes(stateOf(saved))
  }

  /** Where nothing outlives the tab, it would be untrue to say it was saved. */
  private get isHomeless(): boolean {
    return !this.store.persistent && this.saveState.get().state === 'failed'
  }

  private wait(ms: number): void {
    clearTimeout(this.timer)
    this.timer = setTimeout(() => void this.flush(), ms)
  }

  private async write(): Promise<void> {
    try {
      await (this.rescuing ? this.rescue() : this.save())
      this.failures = 0
      if (this.latest) this.wait(PAUSE_MS)
    } catch (error) {
      const failure = error as StoreError
      this.saveState.set({ state: 'failed', message: failure.message })
      if (LASTING.has(failure.problem)) return
      this.wait(RETRY_MS[Math.min(this.failures++, RETRY_MS.length - 1)] as number)
    }
  }

  private async save(): Promise<void> {
    const make = this.latest as () => Savable
    this.latest = undefined
    this.underWay = make
    const { worksheet, history, checks } = make()
    this.title = worksheet.title
    let summary: Summary
    try {
      summary = await this.store.save(this.id, worksheet, { seen: this.seen, history, checks })
    } catch (error) {
      this.latest ??= make
      if (!(error instanceof StoreError) || error.problem !== 'elsewhere') {
        if (error instanceof StoreError && error.attempt !== undefined) this.seen = [...this.seen, error.attempt]
        throw error
      }
      this.rescuing = this.latest().worksheet
      this.latest = undefined
      this.events.refused?.()
      return this.rescue()
    } finally {
      this.underWay = undefined
    }
    this.seen = [stateOf(summary)]
    if (!this.store.persistent)
      this.saveState.set({ state: 'failed', message: this.store.problem?.message ?? sessionWords.nothingSaved })
    else if (!this.latest) this.saveState.set({ state: 'saved', at: new Date(summary.changed) })
    if (!this.hasAsked)
      import('../../storage/store/persistence.ts').then(
        ({ askToPersist }) => askToPersist(this.store),
        () => {},
      )
    this.hasAsked = true
    this.events.saved?.()
  }

  /** Another tab's state stays; this one becomes a revision with a name. */
  private async rescue(): Promise<void> {
    const worksheet = this.rescuing as Worksheet
    const revision = await this.store.saveRevision(this.id, { name: sessionWords.unsavedRevision }, worksheet)
    this.rescuing = undefined
    if (revision !== undefined) {
      this.saveState.set({ state: 'refused', revision })
      return
    }
    // The other tab has erased the sheet since: nothing is there to be written over.
    this.latest ??= () => ({ worksheet })
    await this.save()
  }
}
