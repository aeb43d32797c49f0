import type { Given } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const GIVEN: CellKind<Given> = {
  title: 'Given',
  computed: 'given',
  fresh: ({ id, freeName }) => ({ kind: 'given', id, name: freeName('given'), value: '' }),
  sets: ({ fills = {} }) => Object.values(fills),
  renamed: (cell, { one }) =>
    cell.fills
      ? { ...cell, fills: Object.fromEntries(Object.entries(cell.fills).map(([figure, name]) => [figure, one(name)])) }
      : cell,
}
