import type { Value } from '../../language/index.ts'
import { type Layout, VALUE } from '../engine/engine-view.ts'
import { computeInto, downstreamOf, upstreamOf } from '../engine/partial-recompute.ts'

/** The values of some cells if some givens had other values: computed on a copy, the sheet is left as it is. */
export class RangeEvaluator {
  private readonly values: Value[]
  /** What lies between the given and the goals, in order. */
  private readonly path: readonly number[]
  /** By position: 1 where a cell lies between, so that its value is computed here. */
  private readonly between: Uint8Array
  private readonly broken = new Set<number>()

  constructor(
    private readonly layout: Layout,
    private readonly at: readonly number[],
    private readonly goals: readonly number[],
  ) {
    this.values = layout.values.slice()
    this.between = downstreamOf(layout, at)
    this.path = upstreamOf(layout, goals).filter((one) => this.between[one] === 1)
  }

  /** The goals' values; undefined where one does not compute. */
  with(given: readonly Value[]): (Value | undefined)[] {
    const { layout, values, path, goals, broken } = this
    this.at.forEach((place, which) => {
      values[place] = given[which] as Value
    })
    broken.clear()
    for (const one of path) if (this.waits(one) || !computeInto(values, layout, [one])) broken.add(one)
    return goals.map((goal) => (this.isComputed(goal) ? values[goal] : undefined))
  }

  /** Whether something a cell needs is not known. */
  private waits(cell: number): boolean {
    return (this.layout.needs[cell] as Int32Array).some((need) => !this.isComputed(need))
  }

  /** Whether a cell has a value with the given as it is tried. */
  private isComputed(cell: number): boolean {
    const { at, between, broken, layout } = this
    if (at.includes(cell)) return true
    return between[cell] === 1 ? !broken.has(cell) : layout.states[cell] === VALUE
  }
}
