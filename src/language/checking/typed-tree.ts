import type { Callable } from '../values/function-record.ts'
import type { Type, Value } from '../values/types.ts'

export type BinarySign = '+' | '-' | '*' | '/' | '^' | '==' | '!=' | '<' | '<=' | '>' | '>=' | 'and' | 'or'

interface Spanned {
  readonly type: Type
  readonly from: number
  readonly to: number
}

/** A formula whose units have been checked: what is lowered and computed. */
export type TypedNode = Constant | CellUse | Call | Binary | Unary | When | ListOf | PartOf

export interface Constant extends Spanned {
  readonly op: 'constant'
  readonly value: Value
  /** A number typed without a unit, which a fix may give one. */
  readonly bare?: boolean
}
export interface CellUse extends Spanned {
  readonly op: 'cell'
  readonly name: string
}
export interface Call extends Spanned {
  readonly op: 'call'
  readonly record: Callable
  readonly argumentTypes: readonly Type[]
  readonly args: readonly TypedNode[]
}
export interface Binary extends Spanned {
  readonly op: 'binary'
  readonly sign: BinarySign
  readonly left: TypedNode
  readonly right: TypedNode
}
export interface Unary extends Spanned {
  readonly op: 'unary'
  readonly sign: '-' | 'not'
  readonly of: TypedNode
}
export interface When extends Spanned {
  readonly op: 'when'
  readonly condition: TypedNode
  readonly then: TypedNode
  readonly otherwise: TypedNode
}
export interface ListOf extends Spanned {
  readonly op: 'list'
  readonly items: readonly TypedNode[]
}
export interface PartOf extends Spanned {
  readonly op: 'part'
  readonly of: TypedNode
  readonly part: string
}
