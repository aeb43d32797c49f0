import { readFileSync, statSync } from 'node:fs'
import { MAX_TABLE_LENGTH, readTable, TableError, type TextTable } from '../worksheet/table/csv.ts'
import { whyUnread } from './input.ts'
import { InputError } from './input-error.ts'
import * as words from './words.ts'

/** Most tables are UTF-8; older programs on one well-known system write Windows-1252, or UTF-16 with its mark. */
function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

/** Reads a table from a file. Throws InputError. */
export function readTableFile(path: string): TextTable {
  let bytes: Uint8Array
  try {
    if (statSync(path).size > MAX_TABLE_LENGTH)
      throw new InputError(words.inFile(path, words.tableTooLarge(MAX_TABLE_LENGTH / 1e6)))
    bytes = readFileSync(path)
  } catch (error) {
    if (error instanceof InputError) throw error
    throw new InputError(words.inFile(path, whyUnread(error)))
  }
  try {
    return readTable(decoded(bytes))
  } catch (error) {
    if (error instanceof TableError) throw new InputError(words.inFile(path, error.message))
    throw error
  }
}
