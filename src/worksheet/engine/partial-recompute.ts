import { type Computable, ComputeError, refusedValue, type Value } from '../../language/index.ts'
import { type Layout, VALUE } from './engine-view.ts'
import type { Node } from './node.ts'

/** The cells that positions are computed from, themselves among them, in dependency order; a measured cell is computed from none. */
export function upstreamOf(layout: Layout, targets: Iterable<number>): number[] {
  const found = new Set<number>()
  const open = [...targets]
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (found.has(at)) continue
    found.add(at)
    if (layout.programs[at]) open.push(...(layout.needs[at] as Int32Array))
  }
  return [...found].sort((a, b) => a - b)
}

/** Marks what would be computed anew if the cells at some positions had other values; those cells are not marked. */
export function downstreamOf(layout: Layout, sources: Iterable<number>): Uint8Array {
  const marks = new Uint8Array(layout.order.length)
  const open = [...sources]
  for (let at = open.pop(); at !== undefined; at = open.pop())
    for (const dependant of layout.dependants[at] as readonly number[])
      if (marks[dependant] === 0 && layout.programs[dependant]) {
        marks[dependant] = 1
        open.push(dependant)
      }
  return marks
}

/** Whether the cells at all these positions have values. */
export const areAllComputed = (layout: Layout, positions: readonly number[]): boolean =>
  positions.every((at) => layout.states[at] === VALUE)

/** Computes the cells at some positions, in order, into an array of values. False where one of them does not compute. */
export function computeInto(values: Value[], layout: Layout, positions: readonly number[]): boolean {
  try {
    for (const at of positions) {
      const program = layout.programs[at]
      if (!program) continue
      const value = program(values, layout.slots[at] as Int32Array)
      // As in the computation of the sheet: nodes of finite figures need not be looked at.
      if (!Number.isFinite(value)) {
        const { mayBeInfinite } = (layout.order[at] as Node).computable as Computable
        if (refusedValue(value, mayBeInfinite)) return false
      }
      values[at] = value
    }
    return true
  } catch (error) {
    if (error instanceof ComputeError) return false
    throw error
  }
}
