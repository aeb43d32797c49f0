import {
  advised,
  type CompileResult,
  type Diagnostic,
  explainFailure,
  type Library,
  NotYet,
  type Program,
  problem,
  refusedValue,
  type Scope,
  type Type,
  type Value,
} from '../../language/index.ts'
import { isNamed } from '../document/names.ts'
import type { Cell, NamedCell } from '../schema/document.ts'
import type { Capabilities } from './capabilities.ts'
import { dependencyOrder } from './dependency-order.ts'
import { type EngineView, ERROR, type Layout, VALUE, WAITING } from './engine-view.ts'
import { checkNode, clearCompiled, formulaOf, type Node, newNode, sameOrBothMissing, setCell } from './node.ts'
import { SheetScope } from './sheet-scope.ts'
import { type Trace, trace } from './trace.ts'

/** Positions that were computed, in order; `idsAt` turns them into the cells' ids. */
export type Touched = readonly number[]

const EMPTY = new Int32Array(0)

/** The most compiled texts of messages and drawings that are stored; beyond it they are compiled again. */
const MOST_TEXTS = 5000

/** A formula outside a cell, compiled for the types its names had. */
interface CompiledText {
  readonly mentions: readonly string[]
  readonly types: readonly (Type | undefined)[]
  readonly result: CompileResult
  /** What is wrong is said with the names there were then. */
  readonly edition: number
}

/**
 * Computes a sheet's named cells in dependency order, by one loop over arrays: a position for each cell, and after
 * the cells the constants of their formulas. An edit recomputes only what it reaches.
 */
export class Engine implements EngineView {
  /** In the order of the document, so that messages do not depend on the order of the edits. */
  private nodes = new Map<string, Node>()
  /** The first cell with each name; only that one computes under it. */
  private byName = new Map<string, Node>()
  private readonly sheetScope = new SheetScope(() => this.byName)

  // The layout: all arrays below are indexed by position in dependency order.
  private order: Node[] = []
  private positions = new Map<Node, number>()
  private values: Value[] = []
  private states: Uint8Array = new Uint8Array(0)
  private dirty: Uint8Array = new Uint8Array(0)
  private programs: (Program | undefined)[] = []
  private slots: Int32Array[] = []
  private needs: Int32Array[] = []
  private dependants: number[][] = []
  private failures = new Map<Node, Diagnostic>()
  /** What functions advise about the arguments they were last computed with. */
  private readonly advice = new WeakMap<Node, readonly string[]>()
  private readonly texts = new Map<string, CompiledText>()
  private cycles = new Map<Node, readonly Node[]>()
  private traced: Trace | undefined
  private edition = 0
  /** Where limits can be typed: looked through at every edit, so that no other cell need be. */
  private limited: readonly number[] | undefined

  /** The time for limits after one change, in milliseconds; beyond it they are left out, so that typing stays fluid. */
  limitsBudget = 250

  /** Whether exposure values are computed as plain stops, with a warning: so in sheets of version 1. */
  lenientLevels = false

  constructor(
    private library: Library,
    public capabilities: Capabilities,
  ) {}

  node(id: string): Node | undefined {
    return this.nodes.get(id)
  }
  named(name: string): Node | undefined {
    return this.byName.get(name)
  }
  state(node: Node): number {
    return this.states[this.positions.get(node) as number] as number
  }
  value(node: Node): Value {
    return this.values[this.positions.get(node) as number] as Value
  }
  isErroneous(node: Node): boolean {
    return this.state(node) === ERROR || this.isDuplicate(node)
  }
  failure(node: Node): Diagnostic | undefined {
    return this.failures.get(node)
  }
  /** A path round the cycle a node is in. */
  cycle(node: Node): readonly Node[] | undefined {
    return this.cycles.get(node)
  }
  /** The cell that the error of a node in error started in; the node itself where it started there. */
  originOf(node: Node): Node {
    const origin = this.trace().origins[this.positions.get(node) as number] as number
    return this.order[origin] as Node
  }
  /** The givens, or unfinished formulas, that a waiting node waits for in the end. */
  waitsFor(node: Node): Node[] {
    const ends = this.trace().ends[this.positions.get(node) as number] as readonly number[]
    return ends.flatMap((i) => this.unmeasuredIn(i) ?? (this.order[i] as Node)).filter((end) => end !== node)
  }
  /** The frames that a formula waits for, where all that it needs is there but one of their areas. */
  private unmeasuredIn(i: number): Node[] | undefined {
    if (!this.programs[i]) return undefined
    return this.needsOf(this.order[i] as Node).filter(({ cell }) => cell.kind === 'frame')
  }
  /** Whether another cell above has the same name. */
  isDuplicate(node: Node): boolean {
    return this.byName.get(node.cell.name) !== node
  }
  adviceOf(node: Node): readonly string[] {
    // What was advised on another formula, or before a measured value took its place, is no advice on this one.
    const isComputed = node.mayAdvise && this.programs[this.positionOf(node)] !== undefined
    return isComputed ? (this.advice.get(node) ?? []) : []
  }
  idsAt(touched: Touched): Set<string> {
    return new Set(touched.map((i) => (this.order[i] as Node).cell.id))
  }
  names(): Iterable<string> {
    return this.byName.keys()
  }
  get layout(): Layout {
    const { edition, order, values, states, programs, slots, needs, dependants } = this
    return { edition, order, values, states, programs, slots, needs, dependants, limited: this.limitedPositions() }
  }

  private limitedPositions(): readonly number[] {
    this.limited ??= this.order.flatMap((node, at) => (mayCarryLimits(node) ? [at] : []))
    return this.limited
  }
  positionOf(node: Node): number {
    return this.positions.get(node) as number
  }

  scope(except?: Node): Scope {
    return this.sheetScope.scope(this.library, this.lenientLevels, except?.cell.name)
  }

  /** For finding out whether formulas are sound; what is wrong with the others is found out once it is shown. */
  private draftScope(): Scope {
    return { ...this.scope(), isDraft: true }
  }

  /**
   * What is wrong with the text of a node, as the sheet is now: the fixes offered, and the names suggested, depend on all
   * its cells. It is worked out only for what is shown.
   */
  errorsOf(node: Node): readonly Diagnostic[] {
    const { edition } = this.sheetScope
    if (node.errors.length > 0 && node.explainedAt !== edition) {
      checkNode(node, this.scope(), this.capabilities)
      node.explainedAt = edition
    }
    return node.errors
  }

  /** The cells a node's formula names, as far as there are any. */
  needsOf(node: Node): Node[] {
    return node.mentions.flatMap((name) => this.byName.get(name) ?? [])
  }

  /** Takes in a whole list of cells; what is unchanged (the same object) stays as computed. Returns the positions computed. */
  update(cells: readonly Cell[]): Touched {
    const named = cells.filter(isNamed)
    const present = new Set(named.map(({ id }) => id))
    const changed = new Set<Node>()
    const changedNames = new Set<string>()
    for (const [id, node] of this.nodes) if (!present.has(id)) changedNames.add(node.cell.name)
    const ordered: Node[] = []
    for (const cell of named) {
      const known = this.nodes.get(cell.id)
      if (!known) {
        const node = newNode(cell, this.capabilities)
        changed.add(node)
        changedNames.add(cell.name)
        ordered.push(node)
        continue
      }
      ordered.push(known)
      if (known.cell === cell) continue
      if (known.cell.name !== cell.name) changedNames.add(known.cell.name).add(cell.name)
      setCell(known, cell, this.capabilities)
      changed.add(known)
    }
    this.nodes = new Map(ordered.map((node) => [node.cell.id, node]))
    const firstNamed = new Map<string, Node>()
    for (const node of ordered) if (!firstNamed.has(node.cell.name)) firstNamed.set(node.cell.name, node)
    for (const [name, node] of firstNamed) if (this.byName.get(name) !== node) changedNames.add(name)
    this.byName = firstNamed
    for (const node of ordered)
      if (changedNames.has(node.cell.name) || node.mentions.some((name) => changedNames.has(name))) changed.add(node)
    return this.settle(changed)
  }

  /** Takes a larger library, or capabilities that were missing: they only affect cells that did not compile before. */
  extend(library: Library, capabilities = this.capabilities): Touched {
    this.library = library
    this.capabilities = capabilities
    this.texts.clear()
    const all = [...this.nodes.values()]
    const uncompiled = all.filter(({ errors, awaitingCompiler }) => awaitingCompiler || errors.length > 0)
    // What compiles is read again too: another type that reaches it may need what could not be read before.
    for (const node of all) setCell(node, node.cell, capabilities)
    return this.settle(new Set(uncompiled))
  }

  /** Compiles a formula that is not a cell's own; undefined where the compiler for it is not loaded yet. */
  compile(formula: string, scope: Scope): CompileResult | undefined {
    return this.capabilities.compiler.read(formula).check(scope)
  }

  /** The same for a formula in a message or a drawing, in the scope of the sheet: compiled again only when a type it uses changes. */
  compileShown(formula: string): CompileResult | undefined {
    const known = this.texts.get(formula)
    const mentions = known?.mentions ?? this.capabilities.compiler.read(formula).mentions
    const types = mentions.map((name) => this.byName.get(name)?.type)
    const { edition } = this.sheetScope
    const isCurrent = known && (known.edition === edition || known.result.errors.length === 0)
    if (isCurrent && types.every((type, i) => sameOrBothMissing(known.types[i], type))) return known.result
    const result = this.compile(formula, this.scope())
    if (!result) return undefined
    if (this.texts.size >= MOST_TEXTS) this.texts.clear()
    this.texts.set(formula, { mentions, types, result, edition })
    return result
  }

  /** Takes in one changed cell, the fast way for typing. Undefined where it needs `update`. */
  replace(cell: NamedCell): Touched | undefined {
    const node = this.nodes.get(cell.id)
    if (!node || node.cell.kind !== cell.kind || node.cell.name !== cell.name) return undefined
    const position = this.positions.get(node) as number
    const limit = typedLimit(node)
    if (cell.kind !== 'given') this.limited = undefined
    setCell(node, cell, this.capabilities)
    if (cell.kind !== 'given' && !this.rewire(node, position)) return this.settle(new Set([node]))
    const isRetyped = this.recheck(position)
    const touched = this.recompute(position)
    // Changed limits change all dependent limits, though no value has changed.
    const isLimited = limit !== undefined || typedLimit(node) !== undefined
    const reached = isLimited ? this.withDownstream(position, touched) : touched
    return isRetyped ? this.withErrors(reached) : reached
  }

  /** With another name or type in the sheet, something else may be said of whatever is in error. */
  private withErrors(touched: Touched): Touched {
    return [...new Set([...touched, ...this.order.flatMap((_, i) => (this.states[i] === ERROR ? [i] : []))])]
  }

  private withDownstream(position: number, touched: Touched): Touched {
    const walked = new Set<number>()
    const open = [position]
    for (let at = open.pop(); at !== undefined; at = open.pop())
      for (const dependant of this.dependants[at] as number[])
        if (!walked.has(dependant)) {
          walked.add(dependant)
          open.push(dependant)
        }
    return [...new Set([...touched, ...walked])]
  }

  /** Takes in what a formula needs now. False where the cells must be sorted again for it. */
  private rewire(node: Node, position: number): boolean {
    if (this.cycles.has(node)) return false
    const needs = Int32Array.from(this.needsOf(node), (need) => this.positions.get(need) as number)
    if (needs.some((need) => need >= position)) return false
    for (const need of this.needs[position] as Int32Array) {
      const list = this.dependants[need] as number[]
      list.splice(list.indexOf(position), 1)
    }
    for (const need of needs) (this.dependants[need] as number[]).push(position)
    this.needs[position] = needs
    return true
  }

  /** Checks a cell again and, where its type has changed, what depends on it; says whether it has. */
  private recheck(from: number): boolean {
    const scope = this.draftScope()
    if (!this.checkAt(from, scope)) return false
    this.sheetScope.changed()
    const stale = new Uint8Array(this.order.length)
    const spread = (i: number): void => {
      for (const dependant of this.dependants[i] as number[]) stale[dependant] = 1
    }
    spread(from)
    for (let i = from + 1; i < stale.length; i++) if (stale[i] === 1 && this.checkAt(i, scope)) spread(i)
    return true
  }

  private checkAt(i: number, scope: Scope): boolean {
    const node = this.order[i] as Node
    this.dirty[i] = 1
    if (this.cycles.has(node)) return false
    const retyped = checkNode(node, scope, this.capabilities)
    this.load(i)
    return retyped
  }

  /** Puts a cell's program and where its arguments come from in their places; constants follow after the cells. */
  private load(i: number): void {
    const node = this.order[i] as Node
    const { computable } = node
    this.programs[i] = node.measured?.value === undefined ? computable?.program : undefined
    if (!computable) return
    const free = (this.slots[i] ?? EMPTY).filter((slot) => slot >= this.order.length)
    let reused = 0
    this.slots[i] = Int32Array.from(computable.inputs, (input) => {
      if ('cell' in input) return this.positions.get(this.byName.get(input.cell) as Node) as number
      const place = free[reused++] ?? this.values.length
      this.values[place] = input.constant
      return place
    })
  }

  /** Sorts, checks what may have a different type now, lays the arrays out and computes. */
  private settle(changed: Set<Node>): Touched {
    const all = [...this.nodes.values()]
    const index = new Map(all.map((node, i) => [node, i]))
    const dependencies = all.map((node) => this.needsOf(node).map((need) => index.get(need) as number))
    const { sorted, cycles, behind } = dependencyOrder(dependencies)
    const inOrder = [...sorted, ...cycles.keys(), ...behind].map((i) => all[i] as Node)
    for (const node of this.cycles.keys()) changed.add(node)
    this.cycles = asNodes(cycles, all)
    const retyped = new Set<Node>()
    for (const node of this.cycles.keys()) {
      changed.add(node)
      if (node.type) retyped.add(node)
      // A cell in a cycle has no meaning, and what it meant before must not be used.
      clearCompiled(node)
    }
    this.sheetScope.changed()
    const scope = this.draftScope()
    for (const node of inOrder)
      if (!this.cycles.has(node) && (changed.has(node) || this.needsOf(node).some((need) => retyped.has(need)))) {
        changed.add(node)
        if (checkNode(node, scope, this.capabilities)) retyped.add(node)
      }
    this.layOut(inOrder, changed)
    return this.withErrors(this.recompute(0))
  }

  private layOut(inOrder: Node[], changed: ReadonlySet<Node>): void {
    this.limited = undefined
    const before = { values: this.values, states: this.states, positions: this.positions }
    const size = inOrder.length
    this.order = inOrder
    this.positions = new Map(inOrder.map((node, i) => [node, i]))
    this.values = new Array(size).fill(0)
    this.states = new Uint8Array(size).fill(WAITING)
    this.dirty = new Uint8Array(size)
    const dependants: number[][] = inOrder.map(() => [])
    this.programs = new Array(size)
    this.slots = new Array(size)
    this.needs = new Array(size)
    inOrder.forEach((node, i) => {
      const old = before.positions.get(node)
      if (old !== undefined && !changed.has(node)) {
        this.values[i] = before.values[old] as Value
        this.states[i] = before.states[old] as number
      } else this.dirty[i] = 1
      const needs = this.needsOf(node).map((need) => this.positions.get(need) as number)
      this.needs[i] = Int32Array.from(needs)
      for (const need of needs) (dependants[need] as number[]).push(i)
      this.load(i)
    })
    this.dependants = dependants
    for (const node of this.failures.keys()) if (!this.nodes.has(node.cell.id)) this.failures.delete(node)
  }

  /** Computes what is marked, from a position on, marking on what depends on what changed. */
  private recompute(from: number): Touched {
    const { order, dirty, states, values, dependants } = this
    this.traced = undefined
    this.edition++
    const touched: number[] = []
    for (let i = from; i < order.length; i++) {
      if (dirty[i] === 0) continue
      dirty[i] = 0
      const stateBefore = states[i]
      const valueBefore = values[i]
      this.compute(i)
      touched.push(i)
      if (states[i] === stateBefore && states[i] === VALUE && values[i] === valueBefore) continue
      const list = dependants[i] as number[]
      for (let k = 0; k < list.length; k++) dirty[list[k] as number] = 1
    }
    return touched
  }

  private compute(i: number): void {
    if (this.failures.size > 0) this.failures.delete(this.order[i] as Node)
    const program = this.programs[i]
    if (program === undefined) {
      this.settleWithout(i)
      return
    }
    const needs = this.needs[i] as Int32Array
    let worst = VALUE
    for (let k = 0; k < needs.length; k++) {
      const state = this.states[needs[k] as number] as number
      if (state > worst) worst = state
    }
    if (worst !== VALUE) {
      this.states[i] = worst
      return
    }
    try {
      const node = this.order[i] as Node
      const value = node.mayAdvise
        ? this.computeAdvised(node, i, program)
        : program(this.values, this.slots[i] as Int32Array)
      this.values[i] = value
      this.states[i] = VALUE
      if (typeof value === 'number' ? !Number.isFinite(value) : typeof value === 'object') this.refuseOdd(i, value)
    } catch (error) {
      this.fail(i, error)
    }
  }

  /** Computes a cell whose functions may advise, and stores what they advise for its outcome. */
  private computeAdvised(node: Node, i: number, program: Program): Value {
    let value: Value = 0
    const advice = advised(() => {
      value = program(this.values, this.slots[i] as Int32Array)
    })
    this.advice.set(node, advice)
    return value
  }

  /** A given, or a formula that cannot be computed. */
  private settleWithout(i: number): void {
    const node = this.order[i] as Node
    const read = node.reading?.value ?? node.measured?.value
    if (node.errors.length > 0 || this.cycles.has(node)) this.states[i] = ERROR
    else if (read !== undefined) {
      this.values[i] = read
      this.states[i] = VALUE
    } else {
      const needs = this.needs[i] as Int32Array
      this.states[i] = needs.some((need) => this.states[need] === ERROR) ? ERROR : WAITING
    }
  }

  private trace(): Trace {
    this.traced ??= trace({
      size: this.order.length,
      needs: this.needs,
      isWaiting: (i) => this.states[i] === WAITING,
      isErroneous: (i) => this.states[i] === ERROR,
      isFaulty: (i) => {
        const node = this.order[i] as Node
        return node.errors.length > 0 || this.failures.has(node) || this.cycles.has(node)
      },
    })
    return this.traced
  }

  private refuseOdd(i: number, value: Value): void {
    const node = this.order[i] as Node
    const refused = refusedValue(value, node.computable?.mayBeInfinite ?? false)
    if (!refused) return
    this.states[i] = ERROR
    this.failures.set(node, problem(refused, 0, textOf(node).length))
  }

  private fail(i: number, error: unknown): void {
    if (error instanceof NotYet) {
      this.states[i] = WAITING
      return
    }
    const node = this.order[i] as Node
    this.failures.set(node, explainFailure(error, textOf(node), node.computable?.spans))
    this.states[i] = ERROR
  }
}

function asNodes(cycles: ReadonlyMap<number, readonly number[]>, all: readonly Node[]): Map<Node, readonly Node[]> {
  const paths = new Map<readonly number[], readonly Node[]>()
  return new Map(
    [...cycles].map(([i, path]) => {
      const nodes = paths.get(path) ?? path.map((member) => all[member] as Node)
      paths.set(path, nodes)
      return [all[i] as Node, nodes]
    }),
  )
}

const mayCarryLimits = ({ cell, compiled }: Node): boolean =>
  cell.kind === 'given' || 'measured' in cell || compiled?.limits !== undefined

const typedLimit = ({ reading, measured }: Node): number | undefined => (reading ?? measured)?.tolerance

const textOf = (node: Node): string => (node.cell.kind === 'given' ? node.cell.value : formulaOf(node.cell))
