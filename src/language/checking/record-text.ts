import type { Callable, Parameter } from '../values/function-record.ts'
import { describeRange } from '../values/guards.ts'
import { describeType } from '../values/types.ts'
import { CHECK_WORDS as W } from './words.ts'

/** A function's record in words: for the guide, hover help, completion and the terminal. */

function kindInWords(type: Parameter['type']): string {
  if (type.kind === 'any') return W.anyQuantity
  if (type.kind === 'any list') return W.anyList
  if (type.kind === 'any or list') return W.anyOrList
  return type.kind === 'list of any' ? W.listOfAny : describeType(type)
}

/** The allowed values of a parameter, or nothing where any value goes. */
export function rangeText({ range, type }: Parameter): string {
  if (!range) return ''
  const item = type.kind === 'list' ? type.of : type
  return describeRange(range, item.kind === 'number' ? item.dimension : undefined)
}

/** What a parameter is where a call leaves it out; nothing where it must be given. */
export const defaultText = (parameter: Parameter): string =>
  parameter.default === undefined ? '' : W.ifLeftOut(parameter.default)

/** What a parameter takes, in one line. */
export function parameterText(parameter: Parameter): string {
  const choices = parameter.choices
    ? `${parameter.choices.map((choice) => `"${choice}"`).join(' or ')}${parameter.open ? `, ${W.orAnotherText}` : ''}`
    : ''
  return [kindInWords(parameter.type), rangeText(parameter), choices, defaultText(parameter)].filter(Boolean).join('; ')
}

/** What comes out, in words. */
export const resultText = (record: Callable): string =>
  typeof record.result === 'function' ? W.followsArguments : describeType(record.result)
