import type { Library, Scope } from '../../language/index.ts'
import type { Change } from '../document/change.ts'
import { asFolded, foldedAs } from '../document/folding.ts'
import { labelOf as labelOfNamed } from '../document/label.ts'
import { namesShown, triesOthers } from '../document/message-places.ts'
import { isNamed } from '../document/names.ts'
import type { Capabilities } from '../engine/capabilities.ts'
import type { Touched } from '../engine/computation.ts'
import { Engine } from '../engine/engine.ts'
import { checkOutcomeOf, checkStateOf, drawingOutcomeOf, outcomeOf } from '../engine/explain.ts'
import type { Node } from '../engine/node.ts'
import type { CheckOutcome, CheckSummary, DrawingOutcome, Outcome } from '../engine/outcome.ts'
import type { Cell, Check, Given, Worksheet } from '../schema/document.ts'
import { applyChange, type Renaming } from './apply.ts'
import { History, type Steps } from './history.ts'
import { NOTHING_READ, type Outdated, outdatedIn } from './outdated.ts'
import { type Reading, stamped } from './read-under.ts'
import { refuseTooLong, refuseTooLongIn } from './text-limits.ts'
import { outdatedWords } from './words.ts'

type Contradictions = ReadonlyMap<string, readonly string[]>
const NO_CONTRADICTIONS: Contradictions = new Map()

/** What a watcher is called with: everything may have changed, or just the cells with these ids. */
export type Changed = 'all' | ReadonlySet<string>

/** What a sheet works with. Without `renaming` a sheet is filled in, but nothing in it is renamed. */
export interface SheetCapabilities extends Capabilities {
  readonly renaming?: Renaming
  readonly compareMeasured?: CompareMeasured
}

/** Finds the measured results that cannot be right together: for each cell’s id, a sentence on every other that contradicts it. */
export type CompareMeasured = (engine: Engine, outdated: Outdated['readings']) => Contradictions

/** An open worksheet: the document, the outcomes of its cells, and undo. */
export class Sheet {
  private document: Worksheet
  /** For readers that need more than outcomes; they must not change it. */
  readonly engine: Engine
  private readonly history = new History()
  private readonly watchers = new Set<(changed: Changed) => void>()
  private places: Map<string, number> | undefined
  /** For each cell that shows the figures of others, their names. */
  private showing: Map<string, ReadonlySet<string>> | undefined
  /** The cells that are notified of every change. */
  private trying: readonly string[] | undefined
  private outdatedNow: Outdated | undefined

  constructor(
    worksheet: Worksheet,
    private library: Library,
    private capabilities: SheetCapabilities,
  ) {
    this.document = worksheet
    this.engine = new Engine(library, capabilities)
    this.engine.lenientLevels = worksheet.levels_as_stops === true
    this.engine.update(worksheet.cells)
  }

  /** The document as it is now; never changed in place. */
  get worksheet(): Worksheet {
    return this.document
  }
  get cells(): readonly Cell[] {
    return this.document.cells
  }
  get canUndo(): boolean {
    return this.history.canUndo
  }
  get canRedo(): boolean {
    return this.history.canRedo
  }

  cell(id: string): Cell | undefined {
    const at = this.place(id)
    return at === undefined ? undefined : this.document.cells[at]
  }

  /** The outcome of a given or a result. */
  outcome(id: string): Outcome {
    const outcome = outcomeOf(this.engine, this.node(id))
    if (outcome.state !== 'value') return outcome
    const before = this.outdated.readings.get(id)
    const contradicts = outcome.measured && this.contradictions.get(id)
    if (!before && !contradicts) return outcome
    return {
      ...outcome,
      ...(before ? { before } : {}),
      ...(contradicts ? { measured: { ...outcome.measured, contradicts } } : {}),
    }
  }

  /** The state of a check, and its message. */
  check(id: string): CheckOutcome {
    const outcome = checkOutcomeOf(this.engine, ...this.checkAt(id))
    const on = this.outdated.resting.get(id)
    if (!on || outcome.state === 'error' || outcome.state === 'waiting') return outcome
    const labels = on.map((name) => labelOf(this.named(name), name))
    return { state: 'waiting', message: outdatedWords.readAgain(labels), diagnostics: [], needs: on, again: true }
  }

  /** The same without its words. */
  checkState(id: string): CheckOutcome['state'] {
    const state = checkStateOf(this.engine, ...this.checkAt(id))
    return state !== 'error' && this.outdated.resting.has(id) ? 'waiting' : state
  }

  /** The names of the readings a cell is computed from that are older than a change of what they depend on. */
  outdatedBeneath(id: string): readonly string[] {
    return this.outdated.resting.get(id) ?? []
  }

  /** What feeds a drawing. */
  drawing(id: string): DrawingOutcome {
    const cell = this.cell(id)
    if (cell?.kind !== 'drawing') throw new Error(`Cell ${id} is not a drawing.`)
    return drawingOutcomeOf(this.engine, cell)
  }

  /** The cell with a name. */
  named(name: string): Cell | undefined {
    return this.engine.named(name)?.cell
  }

  /** The words in a formula that may be cells. */
  namesIn(formula: string): readonly string[] {
    return this.capabilities.compiler.read(formula).mentions
  }

  /** What a cell's formula may refer to; without an id, all names. */
  scopeFor(id?: string): Scope {
    return this.engine.scope(id === undefined ? undefined : this.engine.node(id))
  }

  get checkSummary(): CheckSummary {
    return this.checkSummaryOf(this.document.cells)
  }

  /** The states of the checks among some of its cells, and how many of the cells are in error. */
  checkSummaryOf(cells: readonly Cell[]): CheckSummary {
    const counts = { pass: 0, marginal: 0, fail: 0, waiting: 0, errors: 0 }
    const { isSound } = this.engine
    for (const cell of cells) {
      if (cell.kind === 'check') {
        const state = this.checkState(cell.id)
        if (state === 'error') counts.errors++
        else counts[state]++
      } else if (!isSound && isNamed(cell)) {
        const node = this.node(cell.id)
        // An error is counted where it is, not again in each cell that is blocked by it.
        if (this.engine.isErroneous(node) && (this.engine.isDuplicate(node) || this.engine.originOf(node) === node))
          counts.errors++
      }
    }
    return counts
  }

  /** Changes the document and recomputes what the change reaches. Throws ChangeRefused, with nothing changed. */
  apply(asked: Change, options: Reading & { readonly merge?: string } = {}): void {
    const before = this.document
    const change = stamped(this.engine, (id) => this.cell(id), asked, options)
    const wasOutdated = this.outdated
    const contradicted = this.contradictions
    const touched = this.typed(change) ?? this.changeWhole(change)
    if (wasOutdated !== NOTHING_READ || !replacesGivens(change)) this.outdatedNow = undefined
    this.history.remember(before, options.merge)
    if (isAlike(wasOutdated.readings, this.outdated.readings) && isAlike(contradicted, this.contradictions))
      this.notify(change, touched)
    else {
      this.places = undefined
      this.forgetShowing()
      this.tellAll('all')
    }
  }

  /** The readings that are older than a change of what they depend on. */
  private get outdated(): Outdated {
    this.outdatedNow ??= outdatedIn(this.engine, this.document.cells)
    return this.outdatedNow
  }

  /** Whether any result is measured. */
  get hasMeasured(): boolean {
    return this.outdated.hasMeasured
  }

  /** The measured values that disagree about what they determine. */
  private get contradictions(): Contradictions {
    const { outdated } = this
    const compare = outdated.hasMeasured && this.capabilities.compareMeasured
    return compare ? compare(this.engine, outdated.readings) : NO_CONTRADICTIONS
  }

  /** Takes back the last step where it was made under this key, as if it had never been. */
  abandon(merge: string): boolean {
    return this.goTo(this.history.abandon(merge))
  }

  /** A sheet with some cells and the functions of this one alone, to try changes on. */
  trial(cells: readonly Cell[]): Sheet {
    const own = new Set(cells.flatMap((cell) => (cell.kind === 'function' ? [cell.name] : [])))
    const functions = this.cells.filter((cell) => cell.kind === 'function' && !own.has(cell.name))
    return new Sheet({ ...this.document, cells: [...functions, ...cells] }, this.library, this.capabilities)
  }

  /** The documents that undo and redo lead to. */
  get steps(): Steps {
    return this.history.steps
  }

  /** Goes on from the steps of an earlier visit, where nothing was changed since the sheet was opened. */
  recallSteps(steps: Steps): void {
    if (this.history.canUndo || this.history.canRedo) return
    this.history.recall(steps)
    this.tellAll('all')
  }

  undo(): boolean {
    return this.goTo(this.history.undo(this.document))
  }
  redo(): boolean {
    return this.goTo(this.history.redo(this.document))
  }

  /**
   * Folds a section away, or out again. It is saved with the document but is no step of undo, and no undo changes it: what
   * is folded is how one looks at the sheet, not what it says.
   */
  fold(id: string, folded: boolean): void {
    const cell = this.cell(id)
    if (cell?.kind !== 'note' || cell.role !== 'heading' || (cell.folded === true) === folded) return
    this.document = {
      ...this.document,
      cells: this.document.cells.map((one) => (one === cell ? asFolded(cell, folded) : one)),
    }
    this.tellAll('all')
  }

  /** Puts another state of the document in the place of this one, as one step of undo. */
  become(worksheet: Worksheet): void {
    this.history.remember(this.document)
    this.take(worksheet)
  }

  /** Takes a library with more functions, or capabilities that were missing, and checks again what is in error. The document stays as it is. */
  extend(library: Library, capabilities = this.capabilities): void {
    const isReadAlike = capabilities === this.capabilities
    this.library = library
    this.capabilities = capabilities
    this.showing = undefined
    this.outdatedNow = undefined
    const ids = this.engine.idsAt(this.engine.extend(library, capabilities))
    // A larger library changes no figure that there was, but may explain what was in error, in messages and drawings too.
    for (const { id, kind } of this.document.cells) if (kind !== 'given' && kind !== 'result') ids.add(id)
    this.tellAll(isReadAlike ? ids : 'all')
  }

  /** Calls back after every change. Returns how to stop. */
  watch(watcher: (changed: Changed) => void): () => void {
    this.watchers.add(watcher)
    return () => this.watchers.delete(watcher)
  }

  /** To an earlier or later state of the document, the sections folded as they are now. */
  private goTo(found: Worksheet | undefined): boolean {
    if (!found) return false
    this.take(foldedAs(this.document, found))
    return true
  }

  private take(worksheet: Worksheet): void {
    this.document = worksheet
    this.places = undefined
    this.outdatedNow = undefined
    this.forgetShowing()
    this.engine.lenientLevels = worksheet.levels_as_stops === true
    this.engine.update(worksheet.cells)
    this.tellAll('all')
  }

  private changeWhole(change: Change): Touched {
    const changed = applyChange(this.document, change, this.capabilities.renaming)
    refuseTooLong(this.document, changed)
    this.document = changed
    return this.engine.update(this.document.cells)
  }

  /** Typing into a cell leaves names and order as they are: only the cell and what it reaches is recomputed. */
  private typeInto(cell: Cell): Touched | undefined {
    const at = this.place(cell.id)
    if (at === undefined || !isNamed(cell)) return undefined
    const touched = this.engine.replace(cell)
    if (touched) this.document = { ...this.document, cells: this.document.cells.with(at, cell) }
    return touched
  }

  /** One cell typed into, or several givens at once as a drag does. */
  private typed(change: Change): Touched | undefined {
    const cells = change.do === 'replace' ? [change.cell] : this.givensFilled(change)
    for (const cell of cells ?? []) refuseTooLongIn(cell, this.cell(cell.id))
    if (change.do === 'replace') return this.typeInto(change.cell)
    return cells?.flatMap((cell) => [...(this.typeInto(cell) ?? [])])
  }

  /** The givens a change fills in anew, where it does nothing else. */
  private givensFilled(change: Change): readonly Given[] | undefined {
    if (change.do !== 'several') return undefined
    const cells = change.changes.flatMap((one) => (one.do === 'replace' && one.cell.kind === 'given' ? [one.cell] : []))
    const stays = (cell: Given): boolean => {
      const before = this.cell(cell.id)
      return before?.kind === 'given' && before.name === cell.name
    }
    return cells.length === change.changes.length && cells.every(stays) ? cells : undefined
  }

  private notify(change: Change, touched: Touched): void {
    const filled = change.do === 'replace' ? [change.cell] : this.givensFilled(change)
    if (!filled) this.places = undefined
    if (!filled?.every(({ kind }) => kind === 'given')) this.forgetShowing()
    if (this.watchers.size === 0) return
    // A function may be called anywhere, in drawings and messages too.
    if (!filled || filled.some(({ kind }) => kind === 'function')) {
      this.tellAll('all')
      return
    }
    const ids = this.engine.idsAt(touched)
    for (const { id } of filled) ids.add(id)
    this.tellAll(this.withThoseShowing(ids))
  }

  /** The cells with these ids, and those whose messages and drawings show them. */
  private withThoseShowing(ids: Set<string>): Set<string> {
    this.showing ??= new Map(
      this.document.cells
        .map((cell) => [cell.id, namesShown(cell, this.capabilities.compiler)] as const)
        .filter(([, names]) => names.size > 0),
    )
    for (const [id, names] of this.showing)
      for (const name of names) {
        const shown = this.engine.named(name)?.cell.id
        if (shown !== undefined && ids.has(shown)) ids.add(id)
      }
    this.trying ??= this.document.cells.filter((cell) => triesOthers(cell)).map(({ id }) => id)
    for (const id of this.trying) ids.add(id)
    return ids
  }

  private forgetShowing(): void {
    this.showing = undefined
    this.trying = undefined
  }

  private tellAll(changed: Changed): void {
    for (const watcher of this.watchers) watcher(changed)
  }

  private place(id: string): number | undefined {
    this.places ??= new Map(this.document.cells.map((cell, at) => [cell.id, at]))
    return this.places.get(id)
  }

  private checkAt(id: string): readonly [Node, Check] {
    const node = this.node(id)
    if (node.cell.kind !== 'check') throw new Error(`Cell ${id} is not a check.`)
    return [node, node.cell]
  }

  private node(id: string): Node {
    const node = this.engine.node(id)
    if (!node) throw new Error(`There is no named cell ${id}.`)
    return node
  }
}

const labelOf = (cell: Cell | undefined, name: string): string => (cell && isNamed(cell) ? labelOfNamed(cell) : name)

type ById = ReadonlyMap<string, unknown>
const isAlike = (one: ById, other: ById): boolean =>
  one === other || (one.size === 0 && other.size === 0) || JSON.stringify([...one]) === JSON.stringify([...other])

/** Whether a change does nothing but fill in givens that are no readings. */
const replacesGivens = (change: Change): boolean =>
  change.do === 'several'
    ? change.changes.every(replacesGivens)
    : change.do === 'replace' && change.cell.kind === 'given' && !change.cell.measured_under
