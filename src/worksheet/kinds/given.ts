import { KIND_TITLES } from '../format/words.ts'
import type { Given } from '../schema/document.ts'
import type { CellKind } from './kind.ts'
import { renamedReading } from './reading.ts'

/** Names in the values of a record, each followed. */
export const renamedIn = (
  names: Readonly<Record<string, string>>,
  one: (name: string) => string,
): Record<string, string> => Object.fromEntries(Object.entries(names).map(([key, name]) => [key, one(name)]))

export const GIVEN: CellKind<Given> = {
  title: KIND_TITLES.given,
  computed: 'given',
  fresh: ({ id, freeName }) => ({ kind: 'given', id, name: freeName('given'), value: '' }),
  sets: ({ fills = {} }) => Object.values(fills),
  listed: ({ advice, constants = {}, read_under = [] }) =>
    [advice?.with ?? [], Object.values(constants), read_under].flat(),
  renamed: (cell, { one }) => ({
    ...cell,
    ...(cell.fills ? { fills: renamedIn(cell.fills, one) } : {}),
    ...(cell.advice?.with === undefined ? {} : { advice: { ...cell.advice, with: one(cell.advice.with) } }),
    ...(cell.constants ? { constants: renamedIn(cell.constants, one) } : {}),
    ...renamedReading(cell, one),
  }),
}
