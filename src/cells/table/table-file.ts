import { MAX_TABLE_LENGTH, TableError } from '../../worksheet/table/csv.ts'
import { tableWords } from './words.ts'

/** The text of a table file: UTF-8, UTF-16 with a byte order mark, otherwise Windows-1252. Throws TableError. */
export async function tableText(file: File): Promise<string> {
  if (file.size > MAX_TABLE_LENGTH) throw new TableError(tableWords.tooLarge(file.name))
  let bytes: Uint8Array
  try {
    bytes = new Uint8Array(await file.arrayBuffer())
  } catch {
    throw new TableError(tableWords.notRead(file.name))
  }
  const [first, second] = bytes
  if (first === 0x50 && second === 0x4b) throw new TableError(tableWords.workbook(file.name))
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
