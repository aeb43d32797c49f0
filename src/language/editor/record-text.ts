import { showQuantity } from '../../units/index.ts'
import type { Callable, Parameter, Range } from '../function-record.ts'
import { describeType, type NumberType } from '../types.ts'

const dimensionOf = (parameter: Parameter): NumberType | undefined => {
  const type = parameter.type
  if (type.kind === 'number') return type
  return type.kind === 'list' && type.of.kind === 'number' ? type.of : undefined
}

/** The allowed values in words: `above 0 mm, at most 1 m`. */
function rangeInWords(range: Range, type: NumberType): string {
  const show = (value: number): string => (value === 0 ? '0' : showQuantity(value, type.dimension).text)
  const parts = [
    range.whole ? 'whole' : '',
    range.above === undefined ? '' : `above ${show(range.above)}`,
    range.least === undefined ? '' : `at least ${show(range.least)}`,
    range.below === undefined ? '' : `below ${show(range.below)}`,
    range.most === undefined ? '' : `at most ${show(range.most)}`,
  ]
  return parts.filter(Boolean).join(', ')
}

function kindInWords(type: Parameter['type']): string {
  if (type.kind === 'any') return 'any quantity'
  if (type.kind === 'any list') return 'any list'
  return type.kind === 'list of any' ? 'a list of any quantities' : describeType(type)
}

/** What a parameter takes, in one line. */
export function parameterInWords(parameter: Parameter): string {
  const { type } = parameter
  const kind = kindInWords(type)
  const number = dimensionOf(parameter)
  const range = parameter.range && number ? rangeInWords(parameter.range, number) : ''
  const choices = parameter.choices ? parameter.choices.map((choice) => `"${choice}"`).join(' or ') : ''
  const fallback = parameter.default === undefined ? '' : `${parameter.default} where not given`
  return [kind, range, choices, fallback].filter(Boolean).join('; ')
}

/** The call as one would write it: `fit_magnification(original_width, …)`. */
export const signature = (record: Callable): string =>
  `${record.name}(${record.parameters.map(({ name }) => name).join(', ')}${record.variadic ? ', …' : ''})`

/** What comes out, in words. */
export const resultInWords = (record: Callable): string =>
  typeof record.result === 'function' ? 'follows what goes in' : describeType(record.result)
