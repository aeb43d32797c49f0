import type { Cell, Run, TableCell } from '../schema/document.ts'
import { type CellKind, renamedFormulas } from './kind.ts'

const isTable = (cell: Cell): cell is TableCell => cell.kind === 'table'

export const RUN: CellKind<Run> = {
  title: 'Run',
  computed: undefined,
  fresh: ({ id, cells }) => {
    const of = cells.find(isTable)?.name
    return { kind: 'run', id, from: {}, ...(of === undefined ? {} : { of }) }
  },
  shown: ({ from }) => Object.values(from),
  listed: ({ of }) => (of === undefined ? [] : [of]),
  renamed: (cell, renaming, cells) => {
    const table = cells.filter(isTable).find(({ name }) => name === cell.of)
    return {
      ...cell,
      ...(cell.of === undefined ? {} : { of: renaming.one(cell.of) }),
      from: renaming.inRow(table, (row) => renamedFormulas(cell.from, row)),
    }
  },
}
