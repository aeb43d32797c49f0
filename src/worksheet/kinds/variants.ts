import { KIND_TITLES } from '../format/words.ts'
import type { Variants } from '../schema/document.ts'
import { type CellKind, mapKeys } from './kind.ts'

const varied = ({ sets }: Variants): string[] => sets.flatMap(({ values }) => Object.keys(values))

export const VARIANTS: CellKind<Variants> = {
  title: KIND_TITLES.variants,
  computed: undefined,
  triesOthers: true,
  fresh: ({ id }) => ({ kind: 'variants', id, sets: [], results: [] }),
  listed: (cell) => [...varied(cell), ...cell.results],
  sets: varied,
  renamed: (cell, { one }) => ({
    ...cell,
    sets: cell.sets.map((set) => ({ ...set, values: mapKeys(set.values, one) })),
    results: cell.results.map(one),
  }),
}
