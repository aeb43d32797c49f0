import { decodeTable, MAX_TABLE_LENGTH, TableError } from '../../worksheet/table/csv.ts'
import { noTable } from '../../worksheet/table/words.ts'
import { tableWords } from './words.ts'

/** The text of a table file. Throws TableError. */
export async function tableText(file: File): Promise<string> {
  if (file.size > MAX_TABLE_LENGTH) throw new TableError(tableWords.tooLarge(file.name))
  let bytes: Uint8Array
  try {
    bytes = new Uint8Array(await file.arrayBuffer())
  } catch {
    throw new TableError(tableWords.notRead(file.name))
  }
  const text = decodeTable(bytes)
  if (text.trim() === '') throw new TableError(noTable)
  return text
}
