import { statSync } from 'node:fs'
import { fromLink, isLink, LinkError } from '../storage/exchange/link.ts'
import { namesFor } from '../worksheet/compose/part-library.ts'
import { type Cell, DocumentError, MAX_DOCUMENT_LENGTH, type Worksheet } from '../worksheet/index.ts'
import { type Arguments, readText, whyUnread } from './input.ts'
import { InputError } from './input-error.ts'
import { withPiece } from './kit.ts'
import { readParts, readSheetOrJob } from './part-files.ts'
import { findReleased } from './released-jobs.ts'
import * as words from './words.ts'

/** Reads a worksheet from a file, or from a link, which begins with `#` or is what the file holds. Throws InputError. */
export async function readWorksheet(path: string): Promise<Worksheet> {
  if (path.startsWith('#')) return linked(path, words.theLink)
  let text: string
  try {
    if (path !== '-' && statSync(path).size > MAX_DOCUMENT_LENGTH)
      throw new InputError(words.inFile(path, words.tooLargeForSheet))
    text = readText(path)
  } catch (error) {
    if (error instanceof InputError) throw error
    throw new InputError(words.inFile(path, whyUnread(error)))
  }
  if (isLink(text)) return linked(text.trim(), path)
  try {
    return readSheetOrJob(text.replace(/^\ufeff/, ''))
  } catch (error) {
    if (error instanceof DocumentError) throw new InputError(words.inFile(path, error.message))
    throw error
  }
}

async function linked(fragment: string, called: string): Promise<Worksheet> {
  try {
    return await fromLink(fragment, findReleased)
  } catch (error) {
    if (error instanceof LinkError) throw new InputError(`${called}: ${error.message}`)
    throw error
  }
}

/** The worksheet with what `--set` fills in. Throws InputError. */
export function withSets(worksheet: Worksheet, sets: Arguments['sets'], path: string): Worksheet {
  let cells = [...worksheet.cells]
  const prefixes = (worksheet.setups ?? []).map((one) => one.name)
  for (const { name, text } of sets) {
    const places = placesOf(cells, name, prefixes)
    if (places.length === 0) throw new InputError(words.notInSheet(name, path))
    for (const at of places) {
      const cell = cells[at] as Cell
      if (cell.kind === 'given' && cell.entry === 'kit') cells = withPiece(cells, cell, text)
      else
        cells[at] =
          cell.kind === 'result'
            ? { ...cell, measured: text }
            : ({ ...cell, value: text, from: { kind: 'typed', text } } as Cell)
    }
  }
  return { ...worksheet, cells }
}

/** Where a given or a result of a name is; of an older name, those that took its place. */
export function placesOf(cells: readonly Cell[], name: string, prefixes: readonly string[]): readonly number[] {
  const at = (one: string): number =>
    cells.findIndex((cell) => (cell.kind === 'given' || cell.kind === 'result') && cell.name === one)
  if (at(name) >= 0) return [at(name)]
  return namesFor(readParts(), name, (one) => at(one) >= 0, prefixes).map(at)
}
