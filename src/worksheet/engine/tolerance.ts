import { ComputeError, computeOnce, type RecordValue, type Value } from '../../language/index.ts'
import { readingNow } from './converted-light.ts'
import type { Engine } from './engine.ts'
import { type Layout, VALUE } from './engine-view.ts'
import type { Node } from './node.ts'
import type { Spread } from './outcome.ts'
import { computeInto, downstreamOf, upstreamOf } from './partial-recompute.ts'

/** A number with limits that others are computed from; a size has two. */
export interface Source {
  readonly at: number
  readonly name: string
  /** Half the width of its limits, in coherent SI. */
  readonly limit: number
  /** Of a size: which side. */
  readonly part?: string
  readonly shifted: (value: Value, by: number) => Value
}

/** A figure made of the values at some positions. */
export interface Figure {
  readonly from: readonly number[]
  readonly of: (values: readonly Value[]) => number
}

/** Small beside the limit, so that the derivative is that at the value; not so small that rounding shows. */
const STEP = 1e-3
/** A figure off the straight line by more than this share of its limits counts as nonlinear. */
const NONLINEAR = 0.05
/** A cell that took longer than this, twice, is not computed again and again at every key. */
const HEAVY_MS = 20
const times = new WeakMap<Node, readonly number[]>()

const isHeavy = (node: Node): boolean => {
  const taken = times.get(node) ?? []
  return taken.length > 1 && taken.every((one) => one > HEAVY_MS)
}

/** The values of a sheet with some sources shifted, computed as far as they are asked for. */
class Shifted {
  private readonly values: Value[]
  private readonly stale: Uint8Array
  private readonly broken = new Set<number>()

  constructor(
    private readonly layout: Layout,
    private readonly shifts: readonly (readonly [Source, number])[],
  ) {
    this.values = layout.values.slice()
    for (const at of new Set(shifts.map(([source]) => source.at))) this.shift(at)
    this.stale = downstreamOf(
      layout,
      shifts.map(([{ at }]) => at),
    )
  }

  private shift(at: number): void {
    for (const [source, by] of this.shifts)
      if (source.at === at) this.values[at] = source.shifted(this.values[at] as Value, by)
  }

  /** The figure, or undefined where it does not compute with these values. */
  figure({ of }: Figure, upstream: readonly number[]): number | undefined {
    for (const at of upstream) {
      if (this.broken.has(at)) return undefined
      if (this.stale[at] === 0) continue
      this.stale[at] = 0
      const started = performance.now()
      const computes = computeInto(this.values, this.layout, [at])
      const node = this.layout.order[at] as Node
      times.set(node, [...(times.get(node) ?? []).slice(-1), performance.now() - started])
      if (!computes) {
        this.broken.add(at)
        return undefined
      }
      // A formula with limits in its text is shifted by those as well.
      this.shift(at)
    }
    const figure = of(this.values)
    return Number.isFinite(figure) ? figure : undefined
  }
}

/** The limits of a sheet's figures after one change. */
class Limits {
  private readonly layout: Layout
  private readonly budget: number
  private readonly sources: readonly Source[]
  private readonly reached: Uint8Array
  private readonly shifted = new Map<string, Shifted>()
  private spent = 0

  constructor(engine: Engine) {
    this.layout = engine.layout
    this.budget = engine.limitsBudget
    this.sources = sourcesOf(engine)
    this.reached = this.sources.length === 0 ? new Uint8Array(0) : this.whatIsReached()
  }

  spread(figure: Figure): Spread | undefined {
    if (!figure.from.some((at) => this.reached[at] === 1)) return undefined
    // What is missing is in a branch that is not taken, as the figure has a value.
    const upstream = upstreamOf(this.layout, figure.from).filter((at) => this.layout.states[at] === VALUE)
    if (this.spent > this.budget) return undefined
    const { order } = this.layout
    if (
      this.budget < Number.POSITIVE_INFINITY &&
      upstream.some((at) => this.reached[at] === 1 && isHeavy(order[at] as Node))
    )
      return undefined
    const started = performance.now()
    try {
      return this.measure(figure, upstream)
    } finally {
      this.spent += performance.now() - started
    }
  }

  private whatIsReached(): Uint8Array {
    const positions = this.sources.map(({ at }) => at)
    const reached = downstreamOf(this.layout, positions)
    for (const at of positions) reached[at] = 1
    return reached
  }

  private measure(figure: Figure, upstream: readonly number[]): Spread | undefined {
    const within = new Set(upstream)
    const sources = this.sources.filter(({ at }) => within.has(at))
    const value = figure.of(this.layout.values)
    const at = (shifts: readonly (readonly [Source, number])[]): number | undefined =>
      this.shift(shifts).figure(figure, upstream)
    const started = performance.now()
    let up = 0
    let down = 0
    let squares = 0
    let off = 0
    let lost = false
    const slopes: number[] = []
    const amounts = new Map<string, number>()
    for (const source of sources) {
      const { limit, name } = source
      const slope = slopeAt((by) => at([[source, by]]), value, limit * STEP)
      const straight = (slope ?? 0) * limit
      const above = at([[source, limit]])
      const below = at([[source, -limit]])
      if (slope === undefined || above === undefined || below === undefined) lost = true
      const ends = [above, below].flatMap((end) => (end === undefined ? [] : [end - value]))
      up += Math.max(Math.abs(straight), ...ends)
      down += Math.max(Math.abs(straight), ...ends.map((end) => -end))
      off += Math.max(
        above === undefined ? 0 : Math.abs(above - value - straight),
        below === undefined ? 0 : Math.abs(below - value + straight),
      )
      squares += straight * straight
      slopes.push(straight)
      amounts.set(name, (amounts.get(name) ?? 0) + Math.abs(straight))
      if (this.spent + performance.now() - started > this.budget) return undefined
    }
    const worst = slopes.reduce((sum, one) => sum + Math.abs(one), 0)
    let low = value - down
    let high = value + up
    if (sources.length > 1)
      // What two givens do together shows at the corners alone; one that does nothing by itself is tried both ways.
      for (const idle of slopes.includes(0) ? [1, -1] : [1])
        for (const side of [1, -1]) {
          const corner = at(
            sources.map((source, i) => [source, source.limit * (side * Math.sign(slopes[i] as number) || idle)]),
          )
          if (corner === undefined) {
            lost = true
            continue
          }
          off = Math.max(off, Math.abs(corner - value - side * worst))
          low = Math.min(low, corner)
          high = Math.max(high, corner)
        }
    const rounding = 1e-10 * Math.max(Math.abs(value), worst)
    return {
      low,
      high,
      likely: Math.sqrt(squares),
      contributions: [...amounts]
        .map(([name, amount]) => ({ name, amount }))
        .filter(({ amount }) => amount > 0)
        .sort((a, b) => b.amount - a.amount),
      nonlinear: lost || off > NONLINEAR * worst + rounding,
    }
  }

  /** Single shifts serve every figure that is looked at; corners differ from figure to figure. */
  private shift(shifts: readonly (readonly [Source, number])[]): Shifted {
    const [first] = shifts
    if (shifts.length !== 1 || !first || this.sources.length > 50) return new Shifted(this.layout, shifts)
    const key = `${this.sources.indexOf(first[0])} ${first[1]}`
    const known = this.shifted.get(key) ?? new Shifted(this.layout, shifts)
    this.shifted.set(key, known)
    return known
  }
}

/** By central difference; to one side where the other does not compute. */
function slopeAt(figure: (by: number) => number | undefined, value: number, step: number): number | undefined {
  const above = figure(step)
  const below = figure(-step)
  if (above !== undefined && below !== undefined) return (above - below) / (2 * step)
  if (above !== undefined) return (above - value) / step
  return below === undefined ? undefined : (value - below) / step
}

/** Where the limits of a worksheet's figures come from, in dependency order. */
export function sourcesOf(engine: Engine): Source[] {
  const { layout } = engine
  const sources: Source[] = []
  for (const at of layout.limited) {
    const node = layout.order[at] as Node
    const limit = layout.states[at] === VALUE ? ownLimit(engine, node) : undefined
    if (limit === undefined || !(limit > 0)) continue
    const { name } = node.cell
    const value = layout.values[at] as Value
    if (typeof value === 'number') sources.push({ at, name, limit, shifted: (from, by) => (from as number) + by })
    else if (typeof value === 'object' && !Array.isArray(value))
      for (const [part, size] of Object.entries(value))
        if (typeof size === 'number')
          sources.push({
            at,
            name,
            limit,
            part,
            shifted: (from, by) => ({ ...(from as RecordValue), [part]: ((from as RecordValue)[part] as number) + by }),
          })
  }
  return sources
}

/** The limits that a cell's own text gives: typed into a given, measured, or behind ± in its formula. */
function ownLimit(engine: Engine, node: Node): number | undefined {
  const reading = readingNow(node, (name) => engine.value(engine.named(name) as Node)) ?? node.measured
  if (reading?.value !== undefined) return reading.tolerance
  const limits = node.compiled?.limits
  if (!limits) return undefined
  try {
    const limit = computeOnce(limits.of, (name) => engine.value(engine.named(name) as Node)).value
    return Math.abs(limits.relative ? (limit as number) * (engine.value(node) as number) : (limit as number))
  } catch (error) {
    if (error instanceof ComputeError) return undefined
    throw error
  }
}

const known = new WeakMap<Engine, { readonly edition: number; readonly limits: Limits }>()

function limitsOf(engine: Engine): Limits {
  const { edition } = engine.layout
  const before = known.get(engine)
  if (before?.edition === edition) return before.limits
  const limits = new Limits(engine)
  known.set(engine, { edition, limits })
  return limits
}

/** How far a figure may be off; undefined where nothing it is made of carries limits, or computing it takes too long. */
export const spreadOf = (engine: Engine, figure: Figure): Spread | undefined => limitsOf(engine).spread(figure)

/** How far a cell's own figure may be off. */
export function spreadOfCell(engine: Engine, node: Node): Spread | undefined {
  const at = engine.positionOf(node)
  return spreadOf(engine, { from: [at], of: (values) => values[at] as number })
}
