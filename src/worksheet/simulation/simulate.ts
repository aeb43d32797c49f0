import { compileColumns } from '../../language/columns/column-compiler.ts'
import { type Column, type ColumnProgram, columnOf, numbers, valueAt } from '../../language/columns/columns.ts'
import { type Program, stepsOfProgram } from '../../language/evaluating/closures.ts'
import { ComputeError, type RecordValue, refusedValue, type Value } from '../../language/index.ts'
import { readCoverage } from '../document/coverage.ts'
import type { Engine } from '../engine/engine.ts'
import { type Layout, VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import { downstreamOf, upstreamOf } from '../engine/partial-recompute.ts'
import { type Source, sourcesOf } from '../engine/tolerance.ts'
import { Draws, type Spreading } from './draws.ts'
import { type SimulatedFigure, Tally } from './tally.ts'

export interface SimulationOptions {
  /** How often the worksheet is computed, each time with other values within the limits. */
  readonly tries: number
  /** A whole number; the same seed gives the same figures. */
  readonly seed: number
  /** The names of the results and checks to report; all where nothing is said. */
  readonly names?: ReadonlySet<string>
  /** The names of the cells whose limits are drawn from; the others stay at their values. All where nothing is said. */
  readonly drawn?: ReadonlySet<string>
  readonly histogram?: boolean
  /** Called after each block with the number of tries done; false ends the simulation there. */
  readonly goesOn?: (done: number) => boolean
}

export interface Simulation {
  /** How many tries were made. */
  readonly tries: number
  /** By name, the results that are numbers. */
  readonly figures: ReadonlyMap<string, SimulatedFigure>
  /** By name of a check, the share of tries in which it passes. */
  readonly passes: ReadonlyMap<string, number>
}

/** Small enough that the columns of a few cells stay in the processor's cache. */
const BLOCK = 1024

function spreadingOf({ cell }: Node, { limit }: Source): Spreading {
  if (cell.kind !== 'given') return { distribution: 'rectangular', limit, coverage: 1 }
  return { distribution: cell.distribution ?? 'rectangular', limit, coverage: readCoverage(cell.coverage).factor }
}

/**
 * Propagates the ± limits of a worksheet by a Monte Carlo method (JCGM 101:2008): all quantities with limits are drawn
 * independently of each other, and every cell that depends on one is computed for each draw, a block of tries at a time.
 */
export function simulate(engine: Engine, options: SimulationOptions): Simulation {
  const { tries, goesOn } = options
  const blocks = new Blocks(engine, options)
  let done = 0
  while (done < tries) {
    const n = Math.min(BLOCK, tries - done)
    blocks.run(n)
    done += n
    if (goesOn?.(done) === false) break
  }
  return blocks.simulation(done)
}

interface Watched {
  readonly at: number
  readonly name: string
  readonly tally?: Tally
  passed: number
}

class Blocks {
  private readonly layout: Layout
  private readonly columns: Column[]
  private readonly order: readonly number[]
  private readonly programs = new Map<number, ColumnProgram>()
  private readonly sources = new Map<number, { readonly source: Source; readonly spreading: Spreading }[]>()
  private readonly buffers = new Map<Source, Float64Array>()
  private readonly watched: readonly Watched[]

  private readonly draws: Draws

  constructor(engine: Engine, { seed, names, drawn, histogram = false }: SimulationOptions) {
    const { layout } = engine
    this.draws = new Draws(seed)
    this.layout = layout
    this.columns = layout.values.map((value) => ({ kind: 'same', value }))
    for (const source of sourcesOf(engine)) {
      if (drawn && !drawn.has(source.name)) continue
      const entry = { source, spreading: spreadingOf(layout.order[source.at] as Node, source) }
      this.sources.set(source.at, [...(this.sources.get(source.at) ?? []), entry])
    }
    const reached = downstreamOf(layout, this.sources.keys())
    for (const at of this.sources.keys()) reached[at] = 1
    this.watched = layout.order.flatMap((node, at): Watched[] => {
      if (layout.states[at] !== VALUE || engine.isDuplicate(node)) return []
      const { kind, name } = node.cell
      if (names && !names.has(name)) return []
      if (kind === 'check') return [{ at, name, passed: 0 }]
      if (kind !== 'result' || typeof layout.values[at] !== 'number') return []
      return [{ at, name, passed: 0, ...(reached[at] === 1 ? { tally: new Tally(histogram) } : {}) }]
    })
    const needed = names
      ? upstreamOf(
          layout,
          this.watched.map(({ at }) => at),
        )
      : [...reached.keys()]
    this.order = needed.filter((at) => reached[at] === 1 && layout.states[at] === VALUE)
    for (const at of this.order) {
      const program = layout.programs[at]
      if (program) this.programs.set(at, columnProgramOf(layout, at, program, reached))
    }
  }

  /** Computes a block of `n` tries. */
  run(n: number): void {
    const { layout, columns } = this
    for (const at of this.order) {
      const program = this.programs.get(at)
      if (program) {
        const args = Array.from(layout.slots[at] as Int32Array, (slot) => columns[slot] as Column)
        columns[at] = refused(program(args, n), n, layout.order[at]?.computable?.mayBeInfinite ?? false)
      } else columns[at] = { kind: 'same', value: layout.values[at] as Value }
      for (const { source, spreading } of this.sources.get(at) ?? [])
        columns[at] = this.spread(columns[at] as Column, source, spreading, n)
    }
    for (const one of this.watched) this.count(one, n)
  }

  private count(one: Watched, n: number): void {
    const column = this.columns[one.at] as Column
    if (!one.tally) {
      for (let i = 0; i < n; i++) if (valueAt(column, i) === true) one.passed++
    } else if (column.kind === 'numbers') one.tally.add(column.data, n)
    else if (column.kind === 'same') one.tally.add(new Float64Array(n).fill(column.value as number), n)
    else one.tally.fail(n)
  }

  /** A column with the draws of a source added to it, or to one part of it. */
  private spread(column: Column, source: Source, spreading: Spreading, n: number): Column {
    if (source.part === undefined) return this.spreadNumbers(column, source, spreading, n)
    const parts = { ...partsOf(column) }
    const part = parts[source.part]
    return part
      ? { kind: 'record', parts: { ...parts, [source.part]: this.spreadNumbers(part, source, spreading, n) } }
      : column
  }

  private spreadNumbers(column: Column, source: Source, spreading: Spreading, n: number): Column {
    if (column.kind !== 'same' && column.kind !== 'numbers') return column
    const data = this.buffers.get(source) ?? new Float64Array(BLOCK)
    this.buffers.set(source, data)
    if (column.kind === 'same') data.fill(column.value as number)
    else data.set(column.data.subarray(0, n))
    this.draws.addTo(data, n, spreading)
    return numbers(data)
  }

  simulation(tries: number): Simulation {
    const figures = new Map<string, SimulatedFigure>()
    const passes = new Map<string, number>()
    for (const { at, name, tally, passed } of this.watched) {
      const value = this.layout.values[at] as Value
      if (typeof value === 'boolean') passes.set(name, passed / tries)
      else if (!tally)
        figures.set(name, { mean: value as number, sd: 0, low95: value as number, high95: value as number, failed: 0 })
      else if (tally.result) figures.set(name, tally.result)
    }
    return { tries, figures, passes }
  }
}

function partsOf(column: Column): Readonly<Record<string, Column>> {
  if (column.kind === 'record') return column.parts
  if (column.kind !== 'same') return {}
  const parts = Object.entries(column.value as RecordValue)
  return Object.fromEntries(parts.map(([name, value]): [string, Column] => [name, { kind: 'same', value }]))
}

/** A cell's program over columns; try by try where it has no steps, as a table has none. */
function columnProgramOf(layout: Layout, at: number, program: Program, reached: Uint8Array): ColumnProgram {
  const steps = stepsOfProgram(program)
  if (steps) return compileColumns(steps)
  const slots = layout.slots[at] as Int32Array
  const scratch = layout.values.slice()
  return (args, n) => {
    const data: (Value | undefined)[] = new Array(n)
    for (let i = 0; i < n; i++) {
      let computes = true
      slots.forEach((slot, k) => {
        if (reached[slot] !== 1) return
        const value = valueAt(args[k] as Column, i)
        if (value === undefined) computes = false
        else scratch[slot] = value
      })
      data[i] = computes ? computed(program, scratch, slots) : undefined
    }
    return columnOf(data)
  }
}

function computed(program: Program, values: readonly Value[], slots: Int32Array): Value | undefined {
  try {
    return program(values, slots)
  } catch (error) {
    if (error instanceof ComputeError) return undefined
    throw error
  }
}

/** A column without the values that a cell may not have: those too large, or infinite where that means nothing. */
function refused(column: Column, n: number, mayBeInfinite: boolean): Column {
  if (column.kind === 'numbers') {
    if (!mayBeInfinite)
      for (let i = 0; i < n; i++) if (!Number.isFinite(column.data[i] as number)) column.data[i] = Number.NaN
    return column
  }
  if (column.kind === 'values')
    return columnOf(
      column.data.map((value) => (value === undefined || refusedValue(value, mayBeInfinite) ? undefined : value)),
    )
  return column.kind === 'same' && refusedValue(column.value, mayBeInfinite) ? { kind: 'none' } : column
}
