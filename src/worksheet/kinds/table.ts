import { KIND_TITLES } from '../format/words.ts'
import type { Column, TableCell } from '../schema/document.ts'
import type { CellKind, Renaming } from './kind.ts'

export const TABLE: CellKind<TableCell> = {
  title: KIND_TITLES.table,
  computed: 'table',
  fresh: ({ id, freeName }) => ({ kind: 'table', id, name: freeName('table'), columns: [], rows: [] }),
  formulas: ({ columns }) => columns.flatMap(({ formula }) => formula ?? []),
  shown: ({ columns }) => columns.flatMap(({ foot = [] }) => foot.flatMap(({ where }) => where ?? [])),
  renamed: (cell, renaming) => ({
    ...cell,
    columns: renaming.inRow(cell, (row) => cell.columns.map((column) => renamedColumn(column, row))),
  }),
}

const renamedColumn = (column: Column, { formula }: Renaming): Column => ({
  ...column,
  ...(column.formula === undefined ? {} : { formula: formula(column.formula) }),
  ...(column.foot === undefined
    ? {}
    : {
        foot: column.foot.map((figure) =>
          figure.where === undefined ? figure : { ...figure, where: formula(figure.where) },
        ),
      }),
})
