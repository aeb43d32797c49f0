import { readFileSync, statSync } from 'node:fs'
import { decodeTable, MAX_TABLE_LENGTH, readTable, TableError, type TextTable } from '../worksheet/table/csv.ts'
import { whyUnread } from './input.ts'
import { InputError } from './input-error.ts'
import * as words from './words.ts'

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
    return readTable(decodeTable(bytes))
  } catch (error) {
    if (error instanceof TableError) throw new InputError(words.inFile(path, error.message))
    throw error
  }
}
