import { KIND_TITLES } from '../format/words.ts'
import type { Cell, Range, TableCell } from '../schema/document.ts'
import type { CellKind, Renaming } from './kind.ts'

/** The given of `original.width` is `original`. */
const givenOf = (of: string | undefined): readonly string[] => (of === undefined ? [] : [of.replace(/\..*$/, '')])

function columnsRenamed({ of, columns = [] }: Range, renaming: Renaming, cells: readonly Cell[]): string[] {
  const [name] = givenOf(of)
  const table = cells.find((one): one is TableCell => one.kind === 'table' && one.name === name)
  return renaming.inRow(table, (row) => columns.map(row.one))
}

export const RANGE: CellKind<Range> = {
  title: KIND_TITLES.range,
  computed: undefined,
  triesOthers: true,
  fresh: ({ id }) => ({ kind: 'range', id, results: [] }),
  listed: ({ of, second, values, results }) => [...givenOf(of), ...givenOf(second?.of), ...givenOf(values), ...results],
  // Columns are plotted as they are: nothing is varied.
  sets: ({ of, second, columns }) => (columns ? [] : [...givenOf(of), ...givenOf(second?.of)]),
  // What is varied reads as a formula: a name, or a part of it.
  renamed: (cell, renaming, cells) => ({
    ...cell,
    ...(cell.of === undefined ? {} : { of: renaming.formula(cell.of) }),
    ...(cell.second?.of === undefined ? {} : { second: { ...cell.second, of: renaming.formula(cell.second.of) } }),
    ...(cell.values === undefined ? {} : { values: renaming.formula(cell.values) }),
    ...(cell.columns === undefined ? {} : { columns: columnsRenamed(cell, renaming, cells) }),
    results: cell.results.map(renaming.one),
  }),
}
