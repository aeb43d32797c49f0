import { type EachSign, eachOperator } from '../values/each-operators.ts'
import { list } from '../values/types.ts'
import type { TypedNode } from './typed-tree.ts'

/** A list as one of its values, so that its units are checked once for all. */
const itemOf = (typed: TypedNode): TypedNode => (typed.type.kind === 'list' ? { ...typed, type: typed.type.of } : typed)

/**
 * What a sign gives between two values of which either may be a list: `check` says what it gives between two numbers,
 * and a list is computed value by value. A table's columns are such lists.
 */
export function eachValue(
  left: TypedNode,
  right: TypedNode,
  { from, to }: { readonly from: number; readonly to: number },
  check: (left: TypedNode, right: TypedNode) => TypedNode | undefined,
): TypedNode | undefined {
  const of = check(itemOf(left), itemOf(right))
  if (!of || (left.type.kind !== 'list' && right.type.kind !== 'list')) return of
  if (of.op !== 'binary') return undefined
  return {
    op: 'call',
    record: eachOperator(of.sign as EachSign),
    argumentTypes: [left.type, right.type],
    args: [left, right],
    type: list(of.type),
    from,
    to,
  }
}
