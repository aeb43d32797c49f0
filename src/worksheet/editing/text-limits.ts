import { ChangeRefused } from '../document/change.ts'
import { MAX_COLUMNS, MAX_ROWS, MAX_TEXT_LENGTH, MAX_TITLE_LENGTH } from '../format/format.ts'
import type { Cell, Worksheet } from '../schema/document.ts'
import * as words from './words.ts'

/** A change that would make a text longer, or a list, than a sheet takes. */
export class TooLong extends ChangeRefused {}

/** How many entries the lists of a cell take, by their key. */
const MOST: Readonly<Record<string, number>> = { rows: MAX_ROWS, columns: MAX_COLUMNS, steps: 200, foot: 6, sets: 3 }

/**
 * Refuses a document in which a text or a list has become longer than a sheet takes: it could be saved, but not opened
 * again. One that is too long already, in a sheet of an earlier version, may stay as it is and be shortened.
 */
export function refuseTooLong(before: Worksheet, after: Worksheet): void {
  const { title, cells, ...rest } = after
  refuseText(title, before.title, MAX_TITLE_LENGTH)
  walk(rest, before)
  if (cells === before.cells) return
  const earlier = new Map(before.cells.map((cell) => [cell.id, cell]))
  for (const cell of cells) refuseTooLongIn(cell, earlier.get(cell.id))
}

/** Refuses a cell in which a text or a list is too long, and longer than in the cell whose place it takes. */
export function refuseTooLongIn(cell: Cell, before: Cell | undefined): void {
  walk(cell, before)
}

function refuseText(value: string, before: unknown, most = MAX_TEXT_LENGTH): void {
  if (value.length <= most || (typeof before === 'string' && value.length <= before.length)) return
  throw new TooLong(words.textTooLong(value.length, most))
}

function walk(value: unknown, before: unknown, key = ''): void {
  if (value === before) return
  if (typeof value === 'string') refuseText(value, before)
  if (typeof value !== 'object' || value === null) return
  // A step, too, has sets: the names of what is set at it.
  const most = Array.isArray(value) && typeof value[0] === 'string' ? undefined : MOST[key]
  if (Array.isArray(value) && most !== undefined && value.length > most)
    if (!(Array.isArray(before) && value.length <= before.length))
      throw new TooLong(words.tooMany(value.length, key, most))
  const known = typeof before === 'object' && before !== null ? (before as Record<string, unknown>) : {}
  for (const [name, one] of Object.entries(value)) walk(one, known[name], name)
}
