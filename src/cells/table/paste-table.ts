import { MAX_ROWS } from '../../worksheet/format/format.ts'
import type { TableCell } from '../../worksheet/index.ts'
import { readTable, TableError } from '../../worksheet/table/csv.ts'
import { matchTable, pasteAt } from '../../worksheet/table/match-import.ts'

/**
 * The table with a pasted text put in from a field on; `to be matched` where the text has headings or is too wide for the
 * columns there are, or else why it cannot be pasted.
 */
export function pasteTable(
  cell: TableCell,
  text: string,
  row: number,
  column: number,
): { readonly cell: TableCell; readonly rows: number } | string | undefined {
  try {
    const { rows } = readTable(text, { most: MAX_ROWS, ...(text.includes('\t') ? { separator: '\t' } : {}) })
    const width = Math.max(...rows.map(({ length }) => length))
    if (column + width > cell.columns.length || (width > 1 && matchTable(cell.columns, rows).hasHeadings))
      return undefined
    return { cell: pasteAt(cell, rows, row, column), rows: rows.length }
  } catch (error) {
    if (!(error instanceof TableError)) throw error
    return error.message
  }
}
