import { KIND_TITLES } from '../format/words.ts'
import type { Given } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const GIVEN: CellKind<Given> = {
  title: KIND_TITLES.given,
  computed: 'given',
  fresh: ({ id, freeName }) => ({ kind: 'given', id, name: freeName('given'), value: '' }),
  sets: ({ fills = {} }) => Object.values(fills),
  listed: ({ advice }) => (advice?.with === undefined ? [] : [advice.with]),
  renamed: (cell, { one }) => ({
    ...cell,
    ...(cell.fills
      ? { fills: Object.fromEntries(Object.entries(cell.fills).map(([figure, name]) => [figure, one(name)])) }
      : {}),
    ...(cell.advice?.with === undefined ? {} : { advice: { ...cell.advice, with: one(cell.advice.with) } }),
  }),
}
