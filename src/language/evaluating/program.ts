import type { Value } from '../values/types.ts'

/** A compiled formula: its arguments are `values[slots[0]]`, `values[slots[1]]`, … */
export type Program = (values: readonly Value[], slots: ArrayLike<number>) => Value

/**
 * A formula as the order in which it is computed: an argument's number, a sign (`~` for a minus before one
 * value, `?` for a condition with two branches), steps of their own for a branch that may be left out, or a call.
 */
export type Step = number | string | readonly Step[] | Call
export interface Call {
  readonly call: string
  readonly count: number
}
