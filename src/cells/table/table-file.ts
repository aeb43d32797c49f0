import { MAX_TABLE_LENGTH, TableError } from '../../worksheet/table/csv.ts'

/** The text of a table's file: UTF-8, UTF-16 where it says so, else as older programs write it. Throws TableError. */
export async function tableText(file: File): Promise<string> {
  if (file.size > MAX_TABLE_LENGTH) throw new TableError(`${file.name} is larger than 50 MB. Take it in parts.`)
  let bytes: Uint8Array
  try {
    bytes = new Uint8Array(await file.arrayBuffer())
  } catch {
    throw new TableError(`${file.name} could not be read: it was moved, or this browser may not open it.`)
  }
  const [first, second] = bytes
  if (first === 0x50 && second === 0x4b)
    throw new TableError(
      `${file.name} is packed as a workbook. Save the sheet in it as CSV, or copy its fields and paste them.`,
    )
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
