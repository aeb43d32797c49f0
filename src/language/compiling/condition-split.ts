import type { TypedNode } from '../checking/typed-tree.ts'
import type { Condition } from '../evaluating/formula-compiler.ts'

const ORDERS = new Set(['<', '<=', '>', '>='])

/** Takes a condition apart, or its opposite; `make` makes what is left ready to compute. */
export function conditionOf<Ready>(typed: TypedNode, make: (part: TypedNode) => Ready, so = true): Condition<Ready> {
  if (typed.op === 'unary' && typed.sign === 'not') return conditionOf(typed.of, make, !so)
  if (typed.op !== 'binary') return { whole: make(typed), so }
  const { sign, left, right } = typed
  if (sign === 'and' || sign === 'or')
    return { both: (sign === 'and') === so, left: conditionOf(left, make, so), right: conditionOf(right, make, so) }
  if (!ORDERS.has(sign)) return { whole: make(typed), so }
  const upward = sign.startsWith('<') === so ? 1 : -1
  return { whole: make(typed), so, order: { left: make(left), right: make(right), upward } }
}
