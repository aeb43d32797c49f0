import { FULL_COMPILER, namesIn } from '../../language/index.ts'
import { ChangeRefused } from '../document/change.ts'
import { labelOf } from '../document/label.ts'
import type { Cell, TableCell } from '../schema/document.ts'
import { columnPlan, refusedColumnName } from '../table/columns.ts'
import { followPart } from './follow-names.ts'
import * as words from './words.ts'

/** The names of the sheet that a table's formulas and the conditions at its foot use. */
function namesOutside(cell: TableCell): ReadonlySet<string> {
  const { outside, places } = columnPlan(cell.columns, FULL_COMPILER)
  const foot = cell.columns.flatMap(({ foot = [] }) => foot.flatMap(({ where = '' }) => namesIn(where)))
  return new Set([...outside, ...foot.map(({ name }) => name).filter((name) => !places.has(name))])
}

/** Why a cell's new name cannot follow into a table: a column there has it, and would be meant instead. */
export function refusedByColumn(cell: TableCell, from: string, to: string): string | undefined {
  if (!cell.columns.some(({ name }) => name === to) || !namesOutside(cell).has(from)) return undefined
  return words.columnIsUsed(labelOf(cell), from, to)
}

/** A column under another name, which follows into the table's formulas and into `originals.name` elsewhere. */
export function withColumnRenamed(cells: readonly Cell[], id: string, at: number, name: string): Cell[] {
  const cell = cells.find((one): one is TableCell => one.id === id && one.kind === 'table')
  const column = cell?.columns[at]
  if (!cell || !column) throw new ChangeRefused(words.columnGone)
  const from = column.name
  if (from === name) return [...cells]
  const refused =
    refusedColumnName(
      name,
      cell.columns.filter((_, other) => other !== at).map((other) => other.name),
    ) ?? (rowNames(cell, cells).has(name) ? words.columnHidesCell(labelOf(cell), name) : undefined)
  if (refused) throw new ChangeRefused(refused)
  const renamed = {
    ...cell,
    columns: cell.columns.with(at, { ...column, name }),
    ...(cell.group === from ? { group: name } : {}),
  }
  // If two have one name, formulas mean the first: what they say of it stays.
  if (cell.columns.findIndex((other) => other.name === from) !== at)
    return cells.map((other) => (other.id === id ? renamed : other))
  return cells.map((other) => followPart(other.id === id ? renamed : other, { of: cell, from, to: name }, cells))
}

/** The names of the sheet used where a row of the table is meant: in it, and in the runs made of it. */
function rowNames(cell: TableCell, cells: readonly Cell[]): ReadonlySet<string> {
  const runs = cells.flatMap((one) => (one.kind === 'run' && one.of === cell.name ? Object.values(one.from) : []))
  return new Set([...namesOutside(cell), ...runs.flatMap((text) => namesIn(text).map(({ name }) => name))])
}
