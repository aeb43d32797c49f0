import { ReadError } from '../../units/index.ts'
import * as words from './words.ts'

const YEAR_FIRST = /^(\d{4})-(\d{1,2})-(\d{1,2})$/
const DAY_FIRST = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/
const SLASHED = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/
const TIME = /^([01]?\d|2[0-3])[:.]([0-5]\d)(?:[:.]([0-5]\d)(?:[.,]\d+)?)?$/

const two = (part: string | number): string => String(part).padStart(2, '0')
const written = (year: string, month: string, day: string): string => `${year}-${two(month)}-${two(day)}`

function isDay(date: string): boolean {
  const at = new Date(`${date}T00:00:00Z`)
  return !Number.isNaN(at.getTime()) && at.toISOString().slice(0, 10) === date
}

/** The readings a date with slashes may have: day first, as most of the world writes it, or month first. */
function slashed(text: string): string[] {
  const [, a, b, year] = (SLASHED.exec(text) ?? []) as unknown as [string, string, string, string]
  if (year === undefined) return []
  return [...new Set([written(year, b, a), written(year, a, b)])].filter(isDay)
}

function dateIn(text: string): string | undefined {
  const [, year, month, day] = YEAR_FIRST.exec(text) ?? []
  if (year !== undefined) return written(year, month as string, day as string)
  const [, first, second, last] = DAY_FIRST.exec(text) ?? []
  if (last !== undefined) return written(last, second as string, first as string)
  const readings = slashed(text)
  return readings.length === 1 ? readings[0] : undefined
}

const clock = (parts: readonly (string | undefined)[]): string =>
  `${two(parts[1] as string)}:${parts[2]}${parts[3] === undefined ? '' : `:${parts[3]}`}`

/** In characters: no date with a time is longer. */
const LONGEST_MOMENT = 64

/** A date alone, as formulas see it: `2026-11-25`. Throws ReadError. */
export function readDate(text: string): string {
  const read = readDateTime(text)
  if (read.length === 10) return read
  throw new ReadError(words.dateOnly, 0, text.length, read.slice(0, 10))
}

/** A time of day, as formulas see it: `09:30` or `09:30:15`, in the order of time when sorted as text. Throws ReadError. */
export function readTime(text: string): string {
  const found = TIME.exec(text.trim())
  if (found) return clock(found)
  throw new ReadError(words.timeOfDay, 0, text.length)
}

/**
 * A date, with or without a time, as formulas see it: `2026-11-25` or `2026-11-25 14:30`, in the order of time when
 * sorted as text. Throws ReadError.
 */
export function readDateTime(text: string): string {
  const plain = text.trim()
  // A pattern that looks for the shortest match overflows the stack over a text of megabytes.
  if (plain.length > LONGEST_MOMENT) throw new ReadError(words.dateAndTime, 0, text.length)
  const [datePart, timePart] = /^(\S+?)(?:T|,?\s+)(\S+?)Z?$/i.exec(plain)?.slice(1) ?? [plain, undefined]
  const date = dateIn(datePart as string)
  const time = timePart === undefined ? undefined : TIME.exec(timePart)
  if (date !== undefined && isDay(date) && time !== null) {
    if (!time) return date
    return `${date} ${clock(time)}`
  }
  const [first, second] = slashed(datePart as string)
  if (first && second)
    throw new ReadError(words.ambiguousDate(first, second), 0, text.length, plain.replace(datePart as string, first))
  throw new ReadError(words.dateAndTime, 0, text.length)
}
