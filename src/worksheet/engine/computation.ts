import {
  advised,
  type Computable,
  type Diagnostic,
  explainFailure,
  MISSING,
  NotYet,
  type Program,
  problem,
  readAnyway,
  refusedValue,
  type Value,
} from '../../language/index.ts'
import { measuredNow } from './converted-light.ts'
import { ERROR, type Layout, VALUE, WAITING } from './engine-view.ts'
import { formulaOf, type Node } from './node.ts'
import { type Trace, trace } from './trace.ts'

/** Positions that were computed, in order; `Computation.idsAt` turns them into the cells' ids. */
export type Touched = ArrayLike<number> & Iterable<number>

/** What computing needs to know of the cells by name. */
export interface NodeGraph {
  node(id: string): Node | undefined
  named(name: string): Node | undefined
  needsOf(node: Node): readonly Node[]
  isInCycle(node: Node): boolean
}

const EMPTY = new Int32Array(0)

/**
 * The values of a sheet's cells, in arrays by position in dependency order, and after the cells the constants of their
 * formulas. An edit marks a position; one loop over the arrays recomputes only what it reaches.
 */
export class Computation {
  private order: Node[] = []
  private positions = new Map<Node, number>()
  private values: Value[] = []
  private states: Uint8Array = new Uint8Array(0)
  private dirty: Uint8Array = new Uint8Array(0)
  /** Room for the positions that one edit computes, used for every edit. */
  private touched = EMPTY
  private programs: (Program | undefined)[] = []
  /** 1 where a function may advise: beside the values, as no node is looked at for most cells. */
  private advising: Uint8Array = new Uint8Array(0)
  /** 1 where a formula with branches reads the value: only there `MISSING` is put, as numbers alone are computed fastest. */
  private branched: Uint8Array = new Uint8Array(0)
  private slots: Int32Array[] = []
  private needs: Int32Array[] = []
  private dependants: number[][] = []
  private failures = new Map<Node, Diagnostic>()
  /** What functions advise about the arguments they were last computed with. */
  private readonly advice = new WeakMap<Node, readonly string[]>()
  private traced: Trace | undefined
  private edition = 0
  /** Where limits can be typed: looked through at every edit, so that no other cell need be. */
  private limited: readonly number[] | undefined

  constructor(private readonly graph: NodeGraph) {}

  get layout(): Layout {
    const { edition, order, values, states, programs, slots, needs, dependants } = this
    this.limited ??= order.flatMap((node, at) => (mayCarryLimits(node) ? [at] : []))
    return { edition, order, values, states, programs, slots, needs, dependants, limited: this.limited }
  }
  positionOf(node: Node): number {
    return this.positions.get(node) as number
  }
  nodeAt(position: number): Node {
    return this.order[position] as Node
  }
  state(node: Node): number {
    return this.states[this.positionOf(node)] as number
  }
  value(node: Node): Value {
    return this.values[this.positionOf(node)] as Value
  }
  failure(node: Node): Diagnostic | undefined {
    return this.failures.get(node)
  }
  adviceOf(node: Node): readonly string[] {
    // What was advised on another formula, or before a measured value took its place, is no advice on this one.
    return (this.advising[this.positionOf(node)] && this.advice.get(node)) || []
  }
  idsAt(touched: Touched): Set<string> {
    return new Set(Array.from(touched, (i) => this.nodeAt(i).cell.id))
  }
  /** The cell that the error of a node in error started in; the node itself where it started there. */
  originOf(node: Node): Node {
    return this.nodeAt(this.trace().origins[this.positionOf(node)] as number)
  }
  /** The givens, or unfinished formulas, that a waiting node waits for in the end. */
  waitsFor(node: Node): Node[] {
    const ends = this.trace().ends[this.positionOf(node)] as readonly number[]
    return ends.flatMap((i) => this.unmeasuredIn(i) ?? this.nodeAt(i)).filter((end) => end !== node)
  }
  /** What a formula waits for where all that it needs is there: frames without an area, tables without rows. */
  private unmeasuredIn(i: number): Node[] | undefined {
    if (!this.programs[i]) return undefined
    return this.graph
      .needsOf(this.nodeAt(i))
      .filter((node) => node.cell.kind === 'frame' || this.hasNoRows(this.positionOf(node)))
  }
  get hasErrors(): boolean {
    return this.states.includes(ERROR)
  }

  /** The positions in error. */
  inError(): number[] {
    return this.order.flatMap((_, i) => (this.states[i] === ERROR ? [i] : []))
  }

  /** Formulas, or what was measured, have changed: other cells may have limits now. */
  limitsChanged(): void {
    this.limited = undefined
  }

  /** The positions that depend on one, in no particular order. */
  downstream(position: number): ReadonlySet<number> {
    const walked = new Set<number>()
    const open = [position]
    for (let at = open.pop(); at !== undefined; at = open.pop())
      for (const dependant of this.dependants[at] as number[])
        if (!walked.has(dependant)) {
          walked.add(dependant)
          open.push(dependant)
        }
    return walked
  }

  /** Takes in what a formula needs now. False where the cells must be sorted again for it. */
  rewire(node: Node): boolean {
    const position = this.positionOf(node)
    const needs = Int32Array.from(this.graph.needsOf(node), (need) => this.positionOf(need))
    if (needs.some((need) => need >= position)) return false
    for (const need of this.needs[position] as Int32Array) {
      const list = this.dependants[need] as number[]
      list.splice(list.indexOf(position), 1)
    }
    for (const need of needs) (this.dependants[need] as number[]).push(position)
    this.needs[position] = needs
    return true
  }

  /**
   * Checks a position again and, where its type has changed, what depends on it; all of them will be recomputed.
   * `check` says whether the type of a node has changed. Says the same of the first.
   */
  recheck(from: number, check: (node: Node) => boolean): boolean {
    const checkAt = (i: number): boolean => {
      this.dirty[i] = 1
      const node = this.nodeAt(i)
      if (this.graph.isInCycle(node)) return false
      const isRetyped = check(node)
      this.load(i)
      return isRetyped
    }
    if (!checkAt(from)) return false
    const stale = new Uint8Array(this.order.length)
    const spread = (i: number): void => {
      for (const dependant of this.dependants[i] as number[]) stale[dependant] = 1
    }
    spread(from)
    for (let i = from + 1; i < stale.length; i++) if (stale[i] === 1 && checkAt(i)) spread(i)
    return true
  }

  /** Puts a cell's program and where its arguments come from in their places; constants follow after the cells. */
  private load(i: number): void {
    const node = this.nodeAt(i)
    const { computable } = node
    const program = node.measured?.value === undefined ? computable?.program : undefined
    this.programs[i] = program
    this.advising[i] = program && node.mayAdvise ? 1 : 0
    if (program && readAnyway(program))
      for (const need of this.needs[i] as Int32Array) {
        this.branched[need] = 1
        if (this.states[need] !== VALUE) this.values[need] = MISSING
      }
    if (!computable) return
    const free = (this.slots[i] ?? EMPTY).filter((slot) => slot >= this.order.length)
    let reused = 0
    this.slots[i] = Int32Array.from(computable.inputs, (input) => {
      if ('cell' in input) return this.positionOf(this.graph.named(input.cell) as Node)
      const place = free[reused++] ?? this.values.length
      this.values[place] = input.constant
      return place
    })
  }

  /** Lays the cells out in an order in which each comes after what it needs; the values of unchanged ones stay. */
  layOut(inOrder: Node[], changed: ReadonlySet<Node>): void {
    this.limited = undefined
    const before = { values: this.values, states: this.states, positions: this.positions }
    const size = inOrder.length
    this.order = inOrder
    this.positions = new Map(inOrder.map((node, i) => [node, i]))
    this.values = new Array(size).fill(0)
    this.states = new Uint8Array(size).fill(WAITING)
    this.dirty = new Uint8Array(size)
    this.touched = new Int32Array(size)
    const dependants: number[][] = inOrder.map(() => [])
    this.programs = new Array(size)
    this.advising = new Uint8Array(size)
    this.branched = new Uint8Array(size)
    this.slots = new Array(size)
    this.needs = new Array(size)
    inOrder.forEach((node, i) => {
      const old = before.positions.get(node)
      if (old !== undefined && !changed.has(node)) {
        this.values[i] = before.values[old] as Value
        this.states[i] = before.states[old] as number
      } else this.dirty[i] = 1
      const needs = this.graph.needsOf(node).map((need) => this.positionOf(need))
      this.needs[i] = Int32Array.from(needs)
      for (const need of needs) (dependants[need] as number[]).push(i)
      this.load(i)
    })
    this.dependants = dependants
    for (const node of this.failures.keys()) if (!this.graph.node(node.cell.id)) this.failures.delete(node)
  }

  /** Computes what is marked, from a position on, marking on what depends on what changed. */
  recompute(from: number): Touched {
    const { dirty, states, values, dependants } = this
    this.traced = undefined
    this.edition++
    const touched = this.touched
    let count = 0
    for (let i = from; i < dirty.length; i++) {
      if (dirty[i] === 0) continue
      dirty[i] = 0
      const stateBefore = states[i]
      const valueBefore = values[i]
      this.compute(i)
      touched[count++] = i
      if (states[i] === stateBefore && states[i] === VALUE && values[i] === valueBefore) continue
      const list = dependants[i] as number[]
      for (let k = 0; k < list.length; k++) dirty[list[k] as number] = 1
    }
    return touched.slice(0, count)
  }

  private compute(i: number): void {
    if (this.failures.size > 0) this.failures.delete(this.nodeAt(i))
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
    if (worst === ERROR || (worst === WAITING && !readAnyway(program))) {
      this.unsettle(i, worst)
      return
    }
    try {
      // What is missing may be in a branch that is not taken.
      const values = worst === WAITING ? this.guarded : this.values
      const value =
        this.advising[i] === 1 ? this.computeAdvised(i, program, values) : program(values, this.slots[i] as Int32Array)
      this.values[i] = value
      this.states[i] = VALUE
      // Most values are finite figures, which are never refused: their nodes need not be looked at.
      if (!Number.isFinite(value)) this.refuseOdd(i, value)
    } catch (error) {
      this.fail(i, error)
    }
  }

  /** The values, of which one that is missing cannot be read: a function might pass it on unseen. */
  private get guarded(): readonly Value[] {
    return new Proxy(this.values, {
      get: (values, at) => {
        if (this.states[Number(at)]) throw new NotYet('')
        return values[Number(at)]
      },
    })
  }

  private unsettle(i: number, state: number): void {
    if (this.branched[i] === 1) this.values[i] = MISSING
    this.states[i] = state
  }

  /** Computes a cell whose functions may advise, and stores what they advise for its outcome. */
  private computeAdvised(i: number, program: Program, values: readonly Value[]): Value {
    let value: Value = 0
    const advice = advised(() => {
      value = program(values, this.slots[i] as Int32Array)
    })
    this.advice.set(this.nodeAt(i), advice)
    return value
  }

  /** A given, or a formula that cannot be computed. */
  private settleWithout(i: number): void {
    const node = this.nodeAt(i)
    node.measured = measuredNow(node, (name) => this.known(name))
    const read = node.reading?.value ?? node.measured?.value
    if (node.errors.length > 0 || this.graph.isInCycle(node)) this.unsettle(i, ERROR)
    else if (read !== undefined) {
      this.values[i] = read
      this.states[i] = VALUE
    } else {
      const needs = this.needs[i] as Int32Array
      this.unsettle(i, needs.some((need) => this.states[need] === ERROR) ? ERROR : WAITING)
    }
  }

  private known(name: string): Value | undefined {
    const node = this.graph.named(name)
    return node && this.state(node) === VALUE ? this.value(node) : undefined
  }

  private trace(): Trace {
    this.traced ??= trace({
      size: this.order.length,
      needs: this.needs,
      isWaiting: (i) => this.states[i] === WAITING,
      awaited: (i) => this.awaited(i),
      isErroneous: (i) => this.states[i] === ERROR,
      isFaulty: (i) => {
        const node = this.nodeAt(i)
        return node.errors.length > 0 || this.graph.isInCycle(node)
      },
    })
    return this.traced
  }

  /** What a waiting cell waits for: first what decides its branches, then what the branch that is taken needs. */
  private awaited(i: number): Int32Array {
    const waiting = (this.needs[i] as Int32Array).filter((need) => this.states[need] === WAITING)
    const program = this.programs[i]
    const places = new Set((program && readAnyway(program))?.map((argument) => (this.slots[i] as Int32Array)[argument]))
    const first = waiting.filter((need) => places.has(need))
    return first.length > 0 ? first : waiting
  }

  private hasNoRows(i: number): boolean {
    const { cell } = this.nodeAt(i)
    return (
      cell.kind === 'table' && this.states[i] === VALUE && (this.values[i] as { readonly count?: unknown }).count === 0
    )
  }

  private refuseOdd(i: number, value: Value): void {
    const node = this.nodeAt(i)
    const refused = refusedValue(value, (node.computable as Computable).mayBeInfinite)
    if (!refused) return
    this.unsettle(i, ERROR)
    this.failures.set(node, problem(refused, 0, textOf(node).length))
  }

  private fail(i: number, error: unknown): void {
    // Without rows a list may be too short for a function: its table is what is to be filled in.
    if (error instanceof NotYet || (this.needs[i] as Int32Array).some((need) => this.hasNoRows(need))) {
      this.unsettle(i, WAITING)
      return
    }
    const node = this.nodeAt(i)
    this.failures.set(node, explainFailure(error, textOf(node), (node.computable as Computable).spans))
    this.unsettle(i, ERROR)
  }
}

const mayCarryLimits = ({ cell, compiled }: Node): boolean =>
  cell.kind === 'given' || 'measured' in cell || compiled?.limits !== undefined

const textOf = (node: Node): string => (node.cell.kind === 'given' ? node.cell.value : formulaOf(node.cell))
