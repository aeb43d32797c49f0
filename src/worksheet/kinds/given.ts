import { KIND_TITLES } from '../format/words.ts'
import type { Given } from '../schema/document.ts'
import { type CellKind, mapValues } from './kind.ts'
import { renamedReading } from './reading.ts'

export const GIVEN: CellKind<Given> = {
  title: KIND_TITLES.given,
  computed: 'given',
  fresh: ({ id, freeName }) => ({ kind: 'given', id, name: freeName('given'), value: '' }),
  sets: ({ fills = {} }) => Object.values(fills),
  listed: ({ advice, constants = {}, read_under = [] }) =>
    [advice?.with ?? [], Object.values(constants), read_under].flat(),
  renamed: (cell, { one }) => ({
    ...cell,
    ...(cell.fills ? { fills: mapValues(cell.fills, one) } : {}),
    ...(cell.advice?.with === undefined ? {} : { advice: { ...cell.advice, with: one(cell.advice.with) } }),
    ...(cell.constants ? { constants: mapValues(cell.constants, one) } : {}),
    ...renamedReading(cell, one),
  }),
}
