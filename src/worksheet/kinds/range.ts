import type { Range } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const RANGE: CellKind<Range> = {
  title: 'Range',
  computed: undefined,
  triesOthers: true,
  fresh: ({ id }) => ({ kind: 'range', id, results: [] }),
  listed: ({ of, results }) => [...(of === undefined ? [] : [of]), ...results],
  sets: ({ of }) => (of === undefined ? [] : [of]),
  renamed: (cell, { one }) => ({
    ...cell,
    ...(cell.of === undefined ? {} : { of: one(cell.of) }),
    results: cell.results.map(one),
  }),
}
