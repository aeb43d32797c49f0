import { FILE_ENDING, FileError, fileName, saveText } from '../../storage/exchange/file.ts'
import type { TableCell } from '../../worksheet/index.ts'
import { writeTable } from '../../worksheet/table/csv.ts'
import { exportRows } from '../../worksheet/table/export.ts'
import { labelOf, type WideView } from '../shared/cell-view.ts'
import { tableWords } from './words.ts'

/** Saves a table as a CSV file. Returns what to show: the file's name, why it failed, or nothing if cancelled. */
export async function saveTable({ cell, sheet }: WideView<TableCell>): Promise<string> {
  const node = sheet.engine.node(cell.id)
  if (!node) return ''
  const name = fileName(`${sheet.worksheet.title} ${labelOf(cell)}`).slice(0, -FILE_ENDING.length)
  try {
    const isSaved = await saveText(`${name}.csv`, writeTable(exportRows(sheet.engine, node)), 'text/csv')
    return isSaved ? tableWords.saved(`${name}.csv`) : ''
  } catch (error) {
    if (!(error instanceof FileError)) throw error
    return error.message
  }
}
