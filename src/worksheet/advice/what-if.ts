import { ComputeError, type Value } from '../../language/index.ts'
import type { Layout } from '../engine/engine-view.ts'
import { computeInto, downstreamOf } from '../engine/partial-recompute.ts'

/** Tries other values of one cell on a copy of the values, and computes what lies between it and a goal. */
export class WhatIf {
  private readonly values: Value[]
  private readonly path: readonly number[]

  constructor(
    private readonly layout: Layout,
    private readonly at: number,
    upstream: readonly number[],
    private readonly goal: (values: readonly Value[]) => number,
  ) {
    this.values = layout.values.slice()
    const marks = downstreamOf(layout, [at])
    this.path = upstream.filter((one) => marks[one] === 1)
  }

  /** How the goal stands with this value; undefined where it does not compute. */
  try(value: Value): number | undefined {
    this.values[this.at] = value
    if (!computeInto(this.values, this.layout, this.path)) return undefined
    try {
      const room = this.goal(this.values)
      return Number.isNaN(room) ? undefined : room
    } catch (error) {
      if (error instanceof ComputeError) return undefined
      throw error
    }
  }
}
