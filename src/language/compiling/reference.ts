import { type Expression, Parser } from 'expr-eval'
import { FUNCTION_TABLE } from '../evaluating/call-table.ts'
import { BINARY, table, UNARY } from '../values/operators.ts'
import type { Value } from '../values/types.ts'

interface Tables {
  unaryOps: object
  binaryOps: object
  ternaryOps: object
  functions: object
  consts: object
}

function restrictedParser(): Parser {
  const parser = new Parser({
    allowMemberAccess: false,
    operators: {
      assignment: false,
      fndef: false,
      array: false,
      concatenate: false,
      factorial: false,
      in: false,
      remainder: false,
      logical: true,
      comparison: true,
      conditional: true,
      add: true,
      subtract: true,
      multiply: true,
      divide: true,
      power: true,
    },
  } as ConstructorParameters<typeof Parser>[0])
  const tables = parser as unknown as Tables
  tables.unaryOps = UNARY
  tables.binaryOps = BINARY
  tables.ternaryOps = table({ '?': (a: unknown, b: unknown, c: unknown) => (a ? b : c) })
  tables.functions = FUNCTION_TABLE
  tables.consts = table({})
  return parser
}

const PARSER = restrictedParser()

/** Parses a lowered formula. It never sees what a user typed. */
export const parseLowered = (text: string): Expression => PARSER.parse(text)

/** Evaluates a lowered formula the slow, plain way: what the closures are tested against. */
export function evaluateReference(text: string, values: readonly Value[]): Value {
  const scope = table(Object.fromEntries(values.map((value, i) => [`a${i}`, value])))
  return parseLowered(text).evaluate(scope as never) as Value
}
