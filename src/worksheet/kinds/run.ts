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
  shown: ({ from, set_ups = [] }) => [from, ...set_ups.map((one) => one.from)].flatMap((fed) => Object.values(fed)),
  listed: ({ of }) => (of === undefined ? [] : [of]),
  renamed: (cell, renaming, cells) => {
    const table = cells.filter(isTable).find(({ name }) => name === cell.of)
    return {
      ...cell,
      ...(cell.of === undefined ? {} : { of: renaming.one(cell.of) }),
      from: renaming.inRow(table, (row) => renamedFormulas(cell.from, row)),
      ...(cell.set_ups === undefined
        ? {}
        : {
            set_ups: cell.set_ups.map((one) => ({
              ...one,
              from: renaming.inRow(table, (row) => renamedFormulas(one.from, row)),
            })),
          }),
    }
  },
}
