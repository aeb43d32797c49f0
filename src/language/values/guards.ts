import { type Dimension, NONE, showQuantity } from '../../units/index.ts'
import { type Callable, type Parameter, type Range, Refusal } from './function-record.ts'
import { ComputeError } from './operations.ts'
import type { Type, Value } from './types.ts'
import * as words from './words.ts'
import { VALUE_WORDS as W } from './words.ts'

export type Implementation = (...args: Value[]) => Value

/** While a cell is being explained, the cautions that its arguments call for are collected here. */
let listener: string[] | undefined

/** Runs `compute` and returns what its functions advise. */
export function advised(compute: () => void): string[] {
  const before = listener
  const collected: string[] = []
  listener = collected
  try {
    compute()
  } finally {
    listener = before
  }
  return [...new Set(collected)]
}

const inRange = (range: Range, value: number): boolean =>
  (range.above === undefined || value > range.above) &&
  (range.least === undefined || value >= range.least) &&
  (range.below === undefined || value < range.below) &&
  (range.most === undefined || value <= range.most) &&
  (!range.whole || Number.isInteger(value)) &&
  !Number.isNaN(value)

/** A range in words: `above 0 mm`, `from 0 to 1`, `a whole number, at least 1`. */
export function describeRange(range: Range, dimension: Dimension | undefined): string {
  const show = (value: number): string => showQuantity(value, dimension ?? NONE).text
  const parts: string[] = []
  if (range.whole) parts.push(words.wholeNumber)
  if (range.least !== undefined && range.most !== undefined)
    parts.push(words.fromTo(show(range.least), show(range.most)))
  else if (range.above !== undefined && range.below !== undefined)
    parts.push(words.aboveAndBelow(show(range.above), show(range.below)))
  else {
    if (range.above !== undefined) parts.push(words.above(show(range.above)))
    if (range.least !== undefined) parts.push(words.atLeast(show(range.least)))
    if (range.below !== undefined) parts.push(words.below(show(range.below)))
    if (range.most !== undefined) parts.push(words.atMost(show(range.most)))
  }
  return parts.join(', ')
}

function refuseRange(record: Callable, parameter: Parameter, type: Type | undefined, value: number): never {
  const item = type?.kind === 'list' ? type.of : type
  const dimension = item?.kind === 'number' ? item.dimension : undefined
  const shown = showQuantity(value, dimension ?? NONE).text
  throw new ComputeError(
    W.outOfRange(parameter.name, record.name, describeRange(parameter.range as Range, dimension), shown),
  )
}

function checkRange(record: Callable, parameter: Parameter, type: Type | undefined, value: Value): void {
  if (parameter.range) {
    if (typeof value === 'number') {
      if (!inRange(parameter.range, value)) refuseRange(record, parameter, type, value)
    } else if (Array.isArray(value))
      for (const item of value)
        if (typeof item === 'number' && !inRange(parameter.range, item)) refuseRange(record, parameter, type, item)
  }
  if (parameter.choices && !parameter.open && !parameter.choices.includes(value as string))
    throw new ComputeError(W.notAChoice(parameter.name, record.name, parameter.choices, String(value)))
}

/** Why a function refuses its arguments, as an error of computing. */
const asComputeError = (error: unknown): unknown => (error instanceof Refusal ? new ComputeError(error.message) : error)

/** A record's arithmetic with its ranges checked before and its advice collected. */
export function guarded(record: Callable, types: readonly Type[]): Implementation {
  const compute = (record.computeFor ? record.computeFor(types) : record.compute) as unknown as Implementation
  const advise = record.advise as unknown as ((...args: Value[]) => string | undefined) | undefined
  const [first] = record.parameters
  // Most calls have one argument; without a list of arguments they take half the time.
  if (first && record.parameters.length === 1 && !record.variadic && !advise)
    return (value: Value) => {
      checkRange(record, first, types[0], value)
      try {
        return compute(value)
      } catch (error) {
        throw asComputeError(error)
      }
    }
  const last = record.parameters.length - 1
  return (...args) => {
    for (let i = 0; i < args.length; i++)
      checkRange(record, record.parameters[Math.min(i, last)] as Parameter, types[i], args[i] as Value)
    try {
      const value = compute(...args)
      if (listener && advise) {
        const advice = advise(...args)
        if (advice) listener.push(advice)
      }
      return value
    } catch (error) {
      throw asComputeError(error)
    }
  }
}
