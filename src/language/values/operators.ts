import * as op from './operations.ts'

/** A table with no prototype: no name but ours is found. */
export const table = <T>(entries: Record<string, T>): Record<string, T> => Object.assign(Object.create(null), entries)

/** The operators of lowered formulas, the same for the reference evaluator and for the closures. */
export const UNARY = table<(a: never) => unknown>({ '-': op.negative, not: op.not })
export const BINARY = table<(a: never, b: never) => unknown>({
  '+': op.add,
  '-': op.subtract,
  '*': op.multiply,
  '/': op.divide,
  '^': op.power,
  '==': op.equal,
  '!=': op.unequal,
  '<': op.less,
  '<=': op.atMost,
  '>': op.greater,
  '>=': op.atLeast,
  // The evaluator short-circuits these itself; the entries only make them known.
  and: (a: boolean, b: boolean) => a && b,
  or: (a: boolean, b: boolean) => a || b,
})
