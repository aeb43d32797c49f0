import type { Cell, TableCell } from '../../worksheet/index.ts'
import { readTable, TableError } from '../../worksheet/table/csv.ts'
import { matchTable, takeTable } from '../../worksheet/table/match-import.ts'
import { newCell } from '../common/new-cell.ts'
import type { PasteResult } from './clip-text.ts'
import { buildWords as words } from './words.ts'

/** A table cell of fields copied from a spreadsheet, its columns as their headings and fields suggest them. */
export function pastedTable(others: readonly Cell[], text: string): PasteResult {
  const empty = newCell('table', others) as TableCell
  try {
    const { rows } = readTable(text, { separator: '\t' })
    const cell = takeTable(empty, rows, matchTable([], rows), 'below')
    return { cells: [cell], said: words.tablePasted(cell.rows.length, cell.columns.length) }
  } catch (error) {
    if (!(error instanceof TableError)) throw error
    return { refused: error.message }
  }
}
