import type { Value } from '../language/index.ts'
import { type Layout, VALUE } from './engine.ts'
import { computeInto, downstreamOf, upstreamOf } from './trial.ts'

/** What some cells would come to if one given had other values: computed on a copy, the sheet is left as it is. */
export class Follow {
  private readonly values: Value[]
  /** What lies between the given and the goals, in order. */
  private readonly path: readonly number[]
  private readonly broken = new Set<number>()

  constructor(
    private readonly layout: Layout,
    private readonly at: number,
    private readonly goals: readonly number[],
  ) {
    this.values = layout.values.slice()
    const marks = downstreamOf(layout, [at])
    this.path = upstreamOf(layout, goals).filter((one) => marks[one] === 1)
  }

  /** The goals' values; undefined where one does not compute. */
  with(value: Value): (Value | undefined)[] {
    const { layout, values, at, path, goals, broken } = this
    values[at] = value
    broken.clear()
    for (const one of path) if (this.waits(one) || !computeInto(values, layout, [one])) broken.add(one)
    const stands = (goal: number): boolean =>
      goal === at || (path.includes(goal) ? !broken.has(goal) : layout.states[goal] === VALUE)
    return goals.map((goal) => (stands(goal) ? values[goal] : undefined))
  }

  /** Whether something a cell needs is not known. */
  private waits(cell: number): boolean {
    const { layout, at, path, broken } = this
    for (const need of layout.needs[cell] as Int32Array) {
      if (need === at) continue
      if (path.includes(need) ? broken.has(need) : layout.states[need] !== VALUE) return true
    }
    return false
  }
}
