import type { SyntaxNode } from '@lezer/common'
import type { NameSpan } from '../syntax/names-in.ts'
import type { Diagnostic } from '../values/diagnostic.ts'
import type { Callable } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import type { TypedNode } from './typed-tree.ts'

/** A check under way: what each kind of node is checked with. Undefined comes back where something is wrong. */
export interface CheckContext {
  readonly text: string
  readonly scope: Scope
  report(diagnostic: Diagnostic): undefined
  /** The text of a node. */
  source(node: { readonly from: number; readonly to: number }): string
  check(node: SyntaxNode): TypedNode | undefined
  /** Checks a node that must be a number, a quantity, or a list of such. */
  numbers(node: SyntaxNode): TypedNode | undefined
  /** Checks a node that must be so or not. */
  truth(node: SyntaxNode): TypedNode | undefined
  useName(span: NameSpan): void
  useFunction(record: Callable): void
}

const PUNCTUATION = '(){},'

/** Every named child; punctuation is left out. */
export function partsOf(node: SyntaxNode): SyntaxNode[] {
  const parts: SyntaxNode[] = []
  for (let child = node.firstChild; child; child = child.nextSibling)
    if (!PUNCTUATION.includes(child.name)) parts.push(child)
  return parts
}
