import { count } from '../../units/plural.ts'
import { type Change, ChangeRefused } from '../document/change.ts'
import type { Worksheet } from '../schema/document.ts'
import { MAX_COLUMNS, MAX_ROWS, MAX_TEXT_LENGTH, MAX_TITLE_LENGTH } from '../schema/format.ts'

/** A change that would make a text longer, or a list, than a sheet takes. */
export class TooLong extends ChangeRefused {}

/** How many entries the lists of a cell take, by their key. */
const MOST: Readonly<Record<string, number>> = { rows: MAX_ROWS, columns: MAX_COLUMNS, steps: 200, foot: 6, sets: 3 }

/**
 * Refuses a change that makes a text or a list longer than a sheet takes: it could be saved, but not opened again.
 * One that is too long already, in a sheet of an earlier version, may stay as it is and be shortened.
 */
export function refuseTooLong({ title, job, cells }: Worksheet, change: Change): void {
  switch (change.do) {
    case 'title':
      refuseText(change.title, title, MAX_TITLE_LENGTH)
      break
    case 'job':
      refuseText(change.job, job)
      break
    case 'add':
      walk(change.cell, undefined)
      break
    case 'insert':
      walk(change.cells, undefined)
      break
    case 'replace':
      walk(
        change.cell,
        cells.find(({ id }) => id === change.cell.id),
      )
      break
    case 'several':
      for (const one of change.changes) refuseTooLong({ title, job, cells } as Worksheet, one)
  }
}

function refuseText(value: string, before: unknown, most = MAX_TEXT_LENGTH): void {
  if (value.length <= most || (typeof before === 'string' && value.length <= before.length)) return
  throw new TooLong(
    `This text has ${count(value.length)} characters, and at most ${count(most)} fit. Nothing was changed: shorten it, or split it.`,
  )
}

function walk(value: unknown, before: unknown, key = ''): void {
  if (value === before) return
  if (typeof value === 'string') refuseText(value, before)
  if (typeof value !== 'object' || value === null) return
  const most = MOST[key]
  if (Array.isArray(value) && most !== undefined && value.length > most)
    if (!(Array.isArray(before) && value.length <= before.length))
      throw new TooLong(
        `There would be ${count(value.length)} ${key}, and at most ${count(most)} fit. Nothing was changed.`,
      )
  const known = typeof before === 'object' && before !== null ? (before as Record<string, unknown>) : {}
  for (const [name, one] of Object.entries(value)) walk(one, known[name], name)
}
