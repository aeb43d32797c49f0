import type { Callable } from './function-record.ts'
import { Refusal } from './function-record.ts'
import { add, divide, multiply, power, subtract } from './operations.ts'
import { alike, pairsOf, withGaps } from './row-gaps.ts'
import type { Type, Value } from './types.ts'
import { VALUE_WORDS as W } from './words.ts'

/** The signs that work on whole lists, value by value. */
export type EachSign = '+' | '-' | '*' | '/' | '^'

const OPERATIONS: Readonly<Record<EachSign, (a: number, b: number) => number>> = {
  '+': add,
  '-': subtract,
  '*': multiply,
  '/': divide,
  '^': power,
}

type Operand = number | readonly Value[]

const isList = (value: Operand): value is readonly Value[] => typeof value !== 'number'

/** Computes two lists value by value, or each value of a list with a number. */
function each(operation: (a: number, b: number) => number, a: Operand, b: Operand): readonly Value[] {
  if (isList(a) && isList(b)) {
    const found = pairsOf(a, b)
    if (!found) throw new Refusal(W.listsDiffer(a.length, b.length))
    const values = found.pairs.map(([x, y]) => operation(x as number, y as number))
    return found.gaps ? withGaps(values, found.gaps) : values
  }
  if (isList(a))
    return alike(
      a.map((x) => operation(x as number, b as number)),
      a,
    )
  if (isList(b))
    return alike(
      b.map((y) => operation(a, y as number)),
      b,
    )
  throw new Error('A sign for lists was given two numbers.')
}

const operand = (name: string) => ({ name, type: { kind: 'any list' as const }, about: name })
// The checker has worked the type out before an operator is called.
const noResult = (): Type => ({ kind: 'text' })

const BY_NAME: ReadonlyMap<string, Callable> = new Map([
  ...(Object.keys(OPERATIONS) as EachSign[]).map((sign): [string, Callable] => [
    `each ${sign}`,
    {
      name: `each ${sign}`,
      parameters: [operand('left'), operand('right')],
      result: noResult,
      compute: (a: Operand, b: Operand) => each(OPERATIONS[sign], a, b),
    },
  ]),
])

/** The function that a sign is between two values of which one at least is a list. No formula can call it by its name. */
export const eachOperator = (sign: EachSign): Callable => BY_NAME.get(`each ${sign}`) as Callable

/** The same by the name it has in prepared formulas. */
export const eachOperatorNamed = (name: string): Callable | undefined => BY_NAME.get(name)
