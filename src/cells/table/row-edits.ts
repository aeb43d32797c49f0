import { MAX_ROWS } from '../../worksheet/format/format.ts'
import type { Column, TableCell } from '../../worksheet/index.ts'

/** Changes of the rows of a table. Unchanged rows stay the same objects, so that they are not read again. */

/** The table with another text in one field. */
export function withField(cell: TableCell, row: number, column: number, text: string): TableCell {
  const before = cell.rows[row] ?? []
  const fields = Array.from({ length: Math.max(before.length, cell.columns.length) }, (_, at) => before[at] ?? '')
  return { ...cell, rows: cell.rows.with(row, fields.with(column, text)) }
}

/** The table with a field's text in the empty fields below it, as far as the next one that is filled in. */
export function withFilledDown(cell: TableCell, row: number, column: number): { cell: TableCell; filled: number } {
  const text = cell.rows[row]?.[column] ?? ''
  let end = row + 1
  while (end < cell.rows.length && (cell.rows[end]?.[column] ?? '').trim() === '') end++
  if (text.trim() === '' || end === row + 1) return { cell, filled: 0 }
  const rows = cell.rows.map((fields, at) => {
    if (at <= row || at >= end) return fields
    return Array.from({ length: Math.max(fields.length, column + 1) }, (_, c) =>
      c === column ? text : (fields[c] ?? ''),
    )
  })
  return { cell: { ...cell, rows }, filled: end - row - 1 }
}

/** The table with one more row, or unchanged if it is full. */
export function withRow(cell: TableCell, at: number, fields: readonly string[] = []): TableCell {
  if (cell.rows.length >= MAX_ROWS) return cell
  return { ...cell, rows: cell.rows.toSpliced(at, 0, [...fields]) }
}

/** The table without one row. */
export const withoutRow = (cell: TableCell, at: number): TableCell => ({ ...cell, rows: cell.rows.toSpliced(at, 1) })

/** The table with one row moved to another place. */
export function withRowMoved(cell: TableCell, from: number, to: number): TableCell {
  const row = cell.rows[from]
  if (!row || to < 0 || to >= cell.rows.length) return cell
  return { ...cell, rows: cell.rows.toSpliced(from, 1).toSpliced(to, 0, row) }
}

/** The table grouped by a column; by none where the name is empty. */
export function grouped(cell: TableCell, name: string): TableCell {
  const { group: _, ...rest } = cell
  return name === '' ? rest : { ...rest, group: name }
}

/** Changes of the columns, which move the fields of all rows with them. */

const withFields = (cell: TableCell, change: (fields: string[]) => string[]): string[][] =>
  cell.rows.map((row) =>
    change(Array.from({ length: Math.max(row.length, cell.columns.length) }, (_, at) => row[at] ?? '')),
  )

/** The table with a column added at a place, empty in every row. */
export const withColumn = (cell: TableCell, at: number, column: Column): TableCell => ({
  ...cell,
  columns: cell.columns.toSpliced(at, 0, column),
  // A column at the end adds no fields, because rows may be shorter than the columns.
  rows: at === cell.columns.length ? cell.rows : withFields(cell, (fields) => fields.toSpliced(at, 0, '')),
})

/** The table without one column and its fields. */
export const withoutColumn = (cell: TableCell, at: number): TableCell => ({
  ...cell,
  columns: cell.columns.toSpliced(at, 1),
  rows: withFields(cell, (fields) => fields.toSpliced(at, 1)),
})

/** The table with one column, and its fields, moved to another place. */
export function withColumnMoved(cell: TableCell, from: number, to: number): TableCell {
  const column = cell.columns[from]
  if (!column || to < 0 || to >= cell.columns.length) return cell
  return {
    ...cell,
    columns: cell.columns.toSpliced(from, 1).toSpliced(to, 0, column),
    rows: withFields(cell, (fields) => fields.toSpliced(from, 1).toSpliced(to, 0, fields[from] as string)),
  }
}
