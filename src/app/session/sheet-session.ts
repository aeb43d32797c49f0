import { signal } from '@lit-labs/signals'
import { type LockState, TabLock, type TabLockMeans } from '../../storage/store/tab-lock.ts'
import type { SavedSheet, Store } from '../../storage/store/types.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { Autosave, type Savable } from './autosave.ts'
import type { countChecks } from './count-checks.ts'
import { nearestSteps, readSteps } from './saved-steps.ts'
import type { UnsavedSheets } from './unsaved-sheets.ts'

export interface SessionOptions {
  readonly open: OpenSheet
  readonly store: Store
  readonly id: string
  /** What is saved of the sheet. */
  readonly saved?: Pick<SavedSheet, 'summary' | 'history'> | undefined
  /** What the sheet was left with when it could not be saved. */
  readonly autosave?: Autosave | undefined
  readonly unsaved: UnsavedSheets
  /** Called at every change of the document made here. */
  readonly changed?: () => void
  readonly lock?: TabLockMeans
}

/** An open worksheet, its place in the store, and this tab's lock on it. */
export class SheetSession {
  readonly lockState = signal<LockState>('here')
  /** The revision that what was typed here became, because another tab had changed the sheet. */
  readonly rescued = signal<number | undefined>(undefined)
  readonly open: OpenSheet
  readonly store: Store
  readonly id: string
  readonly autosave: Autosave
  private readonly unsaved: UnsavedSheets
  private readonly changed: (() => void) | undefined
  /** The steps of undo and redo saved with the sheet, unchecked. */
  private readonly history: unknown
  private countChecks: typeof countChecks | undefined
  private readonly tabLock: TabLock
  private readonly stop: () => void
  /** The document as it is saved or about to be: functions that arrive later change no document. */
  private known: Worksheet
  private reading: Promise<void> = Promise.resolve()

  constructor({ open, store, id, saved, autosave, unsaved, changed, lock }: SessionOptions) {
    this.open = open
    this.store = store
    this.id = id
    this.unsaved = unsaved
    this.known = open.sheet.worksheet
    this.history = saved?.history
    // Only the list of sheets shows it: a save before it is here does without.
    void import('./count-checks.ts').then(
      ({ countChecks }) => {
        this.countChecks = countChecks
        if (saved && !saved.summary.checks) void store.noteChecks(id, countChecks(open.sheet)).catch(() => {})
      },
      () => {},
    )
    this.changed = changed
    this.tabLock = new TabLock(
      id,
      {
        gained: () => void this.resume(),
        asked: () => this.autosave.flush(),
        lost: () => this.lost(),
        savedElsewhere: () => void this.follow(),
      },
      lock,
    )
    this.autosave = autosave ?? new Autosave(store, id, saved?.summary)
    this.autosave.events = {
      saved: () => this.tabLock.saved(),
      refused: () => this.freeze('changed'),
      tried: () => this.tried(),
    }
    this.tried()
    this.stop = open.sheet.watch(() => {
      const { worksheet } = open.sheet
      if (worksheet === this.known) return
      this.known = worksheet
      this.autosave.schedule(this.savable)
      changed?.()
    })
  }

  /** Takes the sheet, or shows that another tab has it. */
  async take(): Promise<void> {
    if (this.store.persistent) {
      this.freeze('elsewhere')
      if (await this.tabLock.take()) await this.resume()
    }
    await this.recallSteps().catch(() => {})
  }

  async takeOver(): Promise<void> {
    await this.tabLock.takeOver()
    await this.resume()
  }

  /** Puts the measurements and ticks of a copy in, as one step of undo. False where another tab has the sheet. */
  async takeIn(merge: (worksheet: Worksheet) => Worksheet): Promise<boolean> {
    if (this.open.frozen.get()) return false
    await this.open.loadAllFunctions()
    this.open.sheet.become(merge(this.open.sheet.worksheet))
    await this.autosave.flush()
    return true
  }

  /** Saves the sheet although nothing was changed: the store was emptied under it, or a fresh sheet is sent to someone. */
  saveAgain(): void {
    this.autosave.schedule(this.savable)
    this.changed?.()
  }

  /** Closes the sheet's page. What is not saved yet goes on being saved. */
  async close(): Promise<void> {
    this.open.close()
    this.stop()
    await this.unsaved.leave(this.autosave)
    this.tabLock.close()
  }

  private readonly savable = (): Savable => ({
    worksheet: this.open.sheet.worksheet,
    history: nearestSteps(this.open.sheet.steps),
    checks: this.countChecks?.(this.open.sheet),
  })

  /** Undo and redo go on where they were when the sheet was left; steps that cannot be read are no steps. */
  private async recallSteps(): Promise<void> {
    if (this.history === undefined) return
    const { readData } = await import('../../worksheet/schema/read-document.ts')
    try {
      const steps = readSteps(this.history, readData)
      if (steps) this.open.sheet.recallSteps(steps)
    } catch {
      // Saved by another version: the sheet itself is not affected.
    }
  }

  private freeze(state: LockState): void {
    this.open.frozen.set(state !== 'here')
    this.lockState.set(state)
  }

  private tried(): void {
    const state = this.autosave.saveState.get()
    if (state.state === 'refused') this.rescued.set(state.revision)
  }

  private lost(): void {
    if (this.lockState.get() !== 'changed') this.freeze('taken')
    void this.autosave.flush()
  }

  private async resume(): Promise<void> {
    await this.autosave.flush()
    await this.readAgain()
    this.freeze('here')
  }

  /** Another tab has saved a change: it is shown here too, unless something typed here is not saved. */
  private async follow(): Promise<void> {
    await this.autosave.flush()
    if (this.lockState.get() !== 'changed') await this.readAgain()
  }

  private readAgain(): Promise<void> {
    this.reading = this.reading.then(() => this.read())
    return this.reading
  }

  /** Shows the saved state where it is another than the one shown. What is typed meanwhile is never replaced. */
  private async read(): Promise<void> {
    const saved = await this.store.read(this.id).catch(() => undefined)
    if (!saved || this.autosave.isUnsaved) return this.autosave.flush()
    if (JSON.stringify(saved.worksheet) === JSON.stringify(this.open.sheet.worksheet)) {
      this.autosave.resume(saved.summary)
      return
    }
    await this.open.loadAllFunctions()
    if (this.autosave.isUnsaved) return this.autosave.flush()
    this.autosave.resume(saved.summary)
    this.known = saved.worksheet
    this.open.sheet.become(saved.worksheet)
  }
}
