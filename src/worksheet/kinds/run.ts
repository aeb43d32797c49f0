import { KIND_TITLES } from '../format/words.ts'
import type { Cell, Run, TableCell } from '../schema/document.ts'
import { type CellKind, mapValues } from './kind.ts'

const isTable = (cell: Cell): cell is TableCell => cell.kind === 'table'

export const RUN: CellKind<Run> = {
  title: KIND_TITLES.run,
  computed: undefined,
  fresh: ({ id, cells }) => {
    const of = cells.find(isTable)?.name
    return { kind: 'run', id, from: {}, ...(of === undefined ? {} : { of }) }
  },
  shown: ({ from, set_ups = [] }) => [from, ...set_ups.map((one) => one.from)].flatMap((fed) => Object.values(fed)),
  listed: ({ of }) => (of === undefined ? [] : [of]),
  renamed: (cell, renaming, cells) => {
    const table = cells.filter(isTable).find(({ name }) => name === cell.of)
    const fed = (from: Run['from']): Run['from'] => renaming.inRow(table, (row) => mapValues(from, row.formula))
    return {
      ...cell,
      ...(cell.of === undefined ? {} : { of: renaming.one(cell.of) }),
      from: fed(cell.from),
      ...(cell.set_ups && { set_ups: cell.set_ups.map((one) => ({ ...one, from: fed(one.from) })) }),
    }
  },
}
