import { statSync } from 'node:fs'
import { type Cell, DocumentError, MAX_DOCUMENT_LENGTH, readDocument, type Worksheet } from '../worksheet/index.ts'
import { type Arguments, InputError, readText, whyUnread } from './input.ts'

/** Reads a worksheet from a file. Throws InputError. */
export function readWorksheet(path: string): Worksheet {
  let text: string
  try {
    if (path !== '-' && statSync(path).size > MAX_DOCUMENT_LENGTH)
      throw new InputError(`${path}: the file is too large to be a worksheet`)
    text = readText(path)
  } catch (error) {
    if (error instanceof InputError) throw error
    throw new InputError(`${path}: ${whyUnread(error)}`)
  }
  try {
    return readDocument(text.replace(/^\ufeff/, ''))
  } catch (error) {
    if (error instanceof DocumentError) throw new InputError(`${path}: ${error.message}`)
    throw error
  }
}

/** The worksheet with what `--set` fills in. Throws InputError. */
export function withSets(worksheet: Worksheet, sets: Arguments['sets'], path: string): Worksheet {
  const cells = [...worksheet.cells]
  for (const { name, text } of sets) {
    const at = cells.findIndex((cell) => (cell.kind === 'given' || cell.kind === 'result') && cell.name === name)
    if (at < 0) throw new InputError(`--set ${name}: ${path} has no given or result named «${name}»`)
    const cell = cells[at] as Cell
    cells[at] = cell.kind === 'result' ? { ...cell, measured: text } : ({ ...cell, value: text } as Cell)
  }
  return { ...worksheet, cells }
}
