import { Signal, signal } from '@lit-labs/signals'
import { type CellSignal, type CellView, calledIn } from '../../cells/shared/cell-view.ts'
import { originOf } from '../../cells/shared/given-origin.ts'
import { initials } from '../../cells/shared/initials.ts'
import { idsOnExamples } from '../../worksheet/analysis/provenance.ts'
import { TooLong } from '../../worksheet/editing/text-limits.ts'
import { type Cell, type Change, ChangeRefused, isNamed, type Note, type Sheet } from '../../worksheet/index.ts'
import { OPEN_ELSEWHERE } from '../common/words.ts'
import { isExact } from './sections.ts'

/** What the worksheet computes of a cell. */
function outcomeOf(cell: Cell, sheet: Sheet): CellView['outcome'] {
  const { id, kind } = cell
  if (kind === 'check') return sheet.check(id)
  if (kind === 'drawing') return sheet.drawing(id)
  return isNamed(cell) ? sheet.outcome(id) : undefined
}

/**
 * An open worksheet as the elements see it. The engine computes in its own loop and reports the cells that changed;
 * only the signals of those cells are set, so that signals never depend on each other.
 */
export class OpenSheet {
  readonly sheet: Sheet
  /** Set at every change: the check summary, the title and the undo history may differ. */
  readonly changed = signal(0)
  /** Set when cells are added, removed or moved, or a heading changes: the faces are laid out again. */
  readonly laidOut = signal(0)
  /** Whether another tab is editing the sheet, so that it is read only here. */
  readonly frozen = signal(false)
  /** Puts off the update of a cell out of sight, and makes it later; false where it is in sight. */
  later: ((id: string) => boolean) | undefined
  private readonly views = new Map<string, CellSignal>()
  /** The cells that have an example's figure, or are computed from one. */
  resting: ReadonlySet<string>
  /** The cells that this was found out for. */
  private cells: readonly Cell[]
  private hasAll = false
  private loadingAll: Promise<void> | undefined
  private loading: Promise<void> | undefined
  /** The folds of a read-only sheet, which are not saved since the sheet must not change. */
  private readonly folds = new Map<string, boolean>()
  private readonly stop: () => void

  /** `hasFullLanguage` where the sheet has the full compiler already. */
  constructor(sheet: Sheet, hasFullLanguage = false) {
    this.sheet = sheet
    if (hasFullLanguage) this.loading = Promise.resolve()
    this.cells = sheet.cells
    this.resting = idsOnExamples(sheet)
    this.stop = sheet.watch((changed) => this.heard(changed))
    this.compareMeasured()
  }

  /** Measured values are compared with each other by what comes with the full language; most sheets need neither. */
  private compareMeasured(): void {
    if (this.sheet.hasMeasured && !this.loading) this.loadFullLanguage().catch(() => {})
  }

  close(): void {
    this.stop()
  }

  /** The signal of a cell, created when an element first asks for it. */
  view(cell: Cell): CellSignal {
    const known = this.views.get(cell.id)
    if (known) return known
    const made = new Signal.State<CellView>(this.viewOf(cell))
    this.views.set(cell.id, made)
    return made
  }

  apply(change: Change, merge?: string): void {
    if (this.frozen.get()) {
      // The field shows a value that the sheet does not have, and must be drawn again.
      this.heard('all')
      throw new ChangeRefused(OPEN_ELSEWHERE)
    }
    try {
      const reading = { when: new Date().toISOString(), by: initials() }
      this.sheet.apply(change, merge === undefined ? reading : { ...reading, merge })
    } catch (error) {
      if (error instanceof TooLong) this.heard('all')
      throw error
    }
  }

  isFolded({ id, folded }: Note): boolean {
    return this.folds.get(id) ?? folded === true
  }

  fold(id: string, folded: boolean): void {
    if (this.frozen.get()) {
      this.folds.set(id, folded)
      this.heard('all')
      return
    }
    this.folds.delete(id)
    this.sheet.fold(id, folded)
  }

  step(which: 'undo' | 'redo'): void {
    if (!this.frozen.get()) this.sheet[which]()
  }

  /** Fetches every function for writing formulas; a sheet opens with only those it calls. */
  loadAllFunctions(): Promise<void> {
    this.loadingAll ??= this.loadAll()
    return this.loadingAll
  }

  private async loadAll(): Promise<void> {
    try {
      const { FULL_CAPABILITIES, wholeLibrary } = await import('../common/full-language.ts')
      this.sheet.extend(await wholeLibrary(), FULL_CAPABILITIES)
      this.hasAll = true
    } catch {
      // Without a network the functions already fetched keep working; the next call tries again.
      this.loadingAll = undefined
    }
  }

  /** Fetches the functions that cells about to be added call. */
  async loadLanguageFor(cells: readonly Cell[]): Promise<void> {
    if (this.hasAll) return
    const { FULL_CAPABILITIES, libraryFor } = await import('../common/full-language.ts')
    const library = await libraryFor([...this.sheet.cells, ...cells])
    if (!this.hasAll) this.sheet.extend(library, FULL_CAPABILITIES)
  }

  /** Fetches the full formula compiler once; a failed fetch is repeated at the next call. */
  loadFullLanguage(): Promise<void> {
    this.loading ??= this.loadLanguageFor([]).catch((error) => {
      this.loading = undefined
      throw error
    })
    return this.loading
  }

  readonly called = (name: string): string => calledIn(this.sheet, name)

  private viewOf(cell: Cell): CellView {
    const { sheet, called } = this
    const rests = this.resting.has(cell.id)
    return { cell, outcome: outcomeOf(cell, sheet), called, sheet, rests } as CellView
  }

  /** Brings the signal of a cell up to date. */
  update(id: string): void {
    const [view, cell] = [this.views.get(id), this.sheet.cell(id)]
    if (view && cell?.kind === view.get().cell.kind) view.set(this.viewOf(cell))
  }

  private heard(changed: 'all' | ReadonlySet<string>): void {
    let layout = changed === 'all'
    const rested = this.resting
    const { cells } = this.sheet
    // Most edits fill in a given that is the user's own, and stays so.
    if (layout || !restAlike(this.cells, cells)) this.resting = idsOnExamples(this.sheet)
    this.cells = cells
    // A figure that becomes the user's own as it is changes no value, and yet what rests on it.
    const moved =
      rested === this.resting
        ? []
        : [...rested, ...this.resting].filter((id) => rested.has(id) !== this.resting.has(id))
    for (const id of changed === 'all' ? [...this.views.keys()] : [...changed, ...moved]) {
      const view = this.views.get(id)
      if (!view) continue
      const cell = this.sheet.cell(id)
      const before = view.get().cell
      // A cell of another kind is another element's: the one that is about to go must not be drawn with it.
      if (cell?.kind !== before.kind) {
        this.views.delete(id)
        layout = true
        continue
      }
      if (cell.kind === 'note' || isExact(cell) !== isExact(before)) layout = true
      if (!this.later?.(id)) this.update(id)
    }
    if (layout) this.laidOut.set(this.laidOut.get() + 1)
    this.changed.set(this.changed.get() + 1)
    this.compareMeasured()
  }
}

/** Whether all that may tell cells apart is the text of givens that come from where they came from before. */
const restAlike = (before: readonly Cell[], after: readonly Cell[]): boolean =>
  before.length === after.length &&
  after.every((cell, at) => {
    const was = before[at]
    if (cell === was) return true
    return cell.kind === 'given' && was?.kind === 'given' && cell.name === was.name && originOf(cell) === originOf(was)
  })
