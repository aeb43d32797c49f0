import type { Value } from '../../language/index.ts'
import type { EngineView } from '../engine/engine-view.ts'
import { VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import type { OmittedRow } from '../engine/outcome.ts'
import { columnLabel } from './columns.ts'
import { rowReader } from './read-table.ts'
import type { RowsComputed } from './rows.ts'
import { tableOf } from './table-node.ts'
import * as words from './words.ts'

/** The computed rows; undefined while the table waits or is in error. */
export function rowsComputed(engine: EngineView, node: Node): RowsComputed | undefined {
  if (engine.isDuplicate(node) || engine.state(node) !== VALUE) return undefined
  const { values, slots } = engine.layout
  return tableOf(node)?.rows?.behind(engine.value(node), values, slots[engine.positionOf(node)] as Int32Array)
}

/** The rows with something in them that do not count, in order. */
export function omittedRows(engine: EngineView, node: Node): OmittedRow[] {
  if (node.cell.kind !== 'table') return []
  const { columns, rows } = node.cell
  const { read } = rowReader(columns)
  const failures = rowsComputed(engine, node)?.failures
  const found: OmittedRow[] = []
  rows.forEach((row, at) => {
    const why = read(row).problems[0] ?? failures?.get(at)
    if (why) found.push({ row: at, column: why.column, message: why.message })
  })
  return found
}

const MOST_NAMED = 5

/** `2 rows are left out: 17 and 40.`, with why for one alone. */
export function omittedRowsText(node: Node, leftOut: readonly OmittedRow[]): string {
  const [first] = leftOut
  if (!first || node.cell.kind !== 'table') return ''
  const column = node.cell.columns[first.column]
  const why = column ? `${columnLabel(column)}: ${first.message}` : first.message
  if (leftOut.length === 1) return words.rowLeftOut(first.row + 1, why)
  const named = leftOut.slice(0, MOST_NAMED).map(({ row }) => `${row + 1}`)
  const more = leftOut.length - named.length
  const last = more > 0 ? words.more(more) : named.pop()
  return words.rowsLeftOut(leftOut.length, named, String(last), first.row + 1, why)
}

/** How many rows count: `3 rows`, `297 of 300 rows`. */
export function rowCountText(counted: number, leftOut: number): { figure: string; unit: string; text: string } {
  const unit = words.rows(leftOut === 0 ? counted : 2)
  const figure = leftOut === 0 ? `${counted}` : words.countedOf(counted, counted + leftOut)
  return { figure, unit, text: `${figure} ${unit}` }
}

/** The value of a field, read or computed; undefined where there is none. */
export function valueAt(
  node: Node,
  computed: RowsComputed | undefined,
  row: number,
  column: number,
): Value | undefined {
  if (node.cell.kind !== 'table') return undefined
  const fields = node.cell.rows[row]
  if (!fields) return undefined
  return rowReader(node.cell.columns).read(fields).values[column] ?? computed?.figures.get(column)?.[row]
}
