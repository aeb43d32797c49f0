import type { Range } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

/** The given of `original.width` is `original`. */
const givenOf = (of: string | undefined): readonly string[] => (of === undefined ? [] : [of.replace(/\..*$/, '')])

const withGiven = (of: string, rename: (name: string) => string): string => {
  const [name, ...side] = of.split('.') as [string, ...string[]]
  return [rename(name), ...side].join('.')
}

export const RANGE: CellKind<Range> = {
  title: 'Range',
  computed: undefined,
  triesOthers: true,
  fresh: ({ id }) => ({ kind: 'range', id, results: [] }),
  listed: ({ of, second, results }) => [...givenOf(of), ...givenOf(second?.of), ...results],
  sets: ({ of, second }) => [...givenOf(of), ...givenOf(second?.of)],
  renamed: (cell, { one }) => ({
    ...cell,
    ...(cell.of === undefined ? {} : { of: withGiven(cell.of, one) }),
    ...(cell.second?.of === undefined ? {} : { second: { ...cell.second, of: withGiven(cell.second.of, one) } }),
    results: cell.results.map(one),
  }),
}
