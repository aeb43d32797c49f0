import type { Change, TableCell } from '../../worksheet/index.ts'

const two = (part: number): string => String(part).padStart(2, '0')

/** A date and time as columns store it: `2026-11-25 14:30`. */
const moment = (at: Date): string =>
  `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`

/** The change that ticks or unticks an original of a table, as one undo step. */
export function tickedRow(table: TableCell, row: number, column: number, done: boolean, at = new Date()): Change {
  const written = table.columns[column]?.entry === 'date and time' ? moment(at) : 'yes'
  const fields = [...(table.rows[row] ?? [])]
  while (fields.length <= column) fields.push('')
  fields[column] = done ? written : ''
  return { do: 'replace', cell: { ...table, rows: table.rows.with(row, fields) } }
}
