import { KIND_TITLES } from '../format/words.ts'
import type { Check } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

/** The formulas in the `{formula}` places of a message. */
const placesIn = (message: string): string[] =>
  [...message.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1] as string)

export const CHECK: CellKind<Check> = {
  title: KIND_TITLES.check,
  computed: 'formula',
  fresh: ({ id, freeName }) => ({ kind: 'check', id, name: freeName('check'), condition: '', message: '' }),
  formula: ({ condition }) => condition,
  formulas: ({ condition }) => [condition],
  shown: ({ message, passes = '' }) => [message, passes].flatMap(placesIn),
  listed: ({ needs_measured = [] }) => needs_measured,
  renamed: (cell, { one, formula, message }) => ({
    ...cell,
    condition: formula(cell.condition),
    message: message(cell.message),
    ...(cell.passes === undefined ? {} : { passes: message(cell.passes) }),
    ...(cell.needs_measured === undefined ? {} : { needs_measured: cell.needs_measured.map(one) }),
  }),
}
