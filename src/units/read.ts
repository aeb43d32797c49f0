import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'
import { aKind } from './dimension-name.ts'
import type { DisplayUnit, Notation } from './display.ts'
import { clip, ReadError, refuseLong } from './read-error.ts'
import { NUMBER, readTerm, skipSpaces, type Term, toNumber } from './read-term.ts'
import { showQuantity } from './show.ts'
import type { CompoundUnit } from './unit-text.ts'
import * as words from './words.ts'

/** Another way the text could have been meant, to be taken with one press. */
export interface Offer {
  /** The text to put in the field instead. */
  readonly text: string
  /** Why one might. */
  readonly label: string
}

/** A quantity as typed into a given: its value in coherent SI and what else the text said. */
export interface Reading {
  readonly value: number
  readonly dimension: Dimension
  /** Limits of error, ±, in coherent SI. */
  readonly tolerance?: number
  readonly notation?: Notation
  readonly offers: readonly Offer[]
}

const F_NUMBER = new RegExp(`^[fFƒ]\\s*/?\\s*(${NUMBER})$`)
const RATIO = new RegExp(`^(${NUMBER})\\s*:\\s*(${NUMBER})$`)

/** Signs that mean the same are made one; the length never changes, so positions stay those of the typed text. */
const evened = (text: string): string => text.replace(/\u2212/g, '-')

/** Reads a quantity as a technician types it, for a field of the given unit. Throws ReadError. */
export const readQuantity = (typed: string, field?: DisplayUnit): Reading => readTyped(typed, field).reading

/** A reading, and the unit that was typed. */
export interface Typed {
  readonly reading: Reading
  /** The unit that was typed, if one was. */
  readonly unit: CompoundUnit | undefined
}

/**
 * Reads a quantity for a field of the given unit, and says which unit was typed. Values are in coherent SI. Throws
 * ReadError.
 */
export function readTyped(typed: string, field: DisplayUnit | undefined): Typed {
  const text = evened(typed)
  const start = text.length - text.trimStart().length
  const end = text.trimEnd().length
  if (start >= end) throw new ReadError(words.nothingFilledIn, 0, typed.length)
  refuseLong(text)
  refuseConfusables(text)
  const plusMinus = /±|\+\s*\/\s*-/.exec(text)
  if (!plusMinus) return readNominal(text, start, end, field)
  const after = plusMinus.index + plusMinus[0].length
  const nominalEnd = text.slice(0, plusMinus.index).trimEnd().length
  const limits = readLimits(text, after, end)
  const { reading: plain, unit: own } = readNominal(text, start, nominalEnd, undefined)
  // `600 ± 2 mm` is 600 mm: a unit typed only after the limits is that of both.
  const shared = own || plain.notation || limits.percent ? undefined : limits.unit
  const nominal = readNominal(text, start, nominalEnd, shared ?? field)
  const tolerance = toleranceOf(limits, nominal.reading, own ?? shared, field, after, end)
  const offers = shared ? [] : nominal.reading.offers
  return { reading: { ...checked(field, start, end, nominal.reading), tolerance, offers }, unit: own ?? shared }
}

function refuseConfusables(text: string): void {
  const dash = text.search(/[\u2012-\u2015]/)
  if (dash >= 0) throw new ReadError(words.longDash, dash, dash + 1, text.replace(/[\u2012-\u2015]/g, '-'))
  const wrong = text.search(/\+-|-\+/)
  if (wrong >= 0) throw new ReadError(words.writePlusMinus, wrong, wrong + 2, text.replace(/\+-|-\+/, '±'))
}

interface Limits {
  readonly value: number
  readonly unit: CompoundUnit | undefined
  readonly percent: boolean
}

/** What follows the ±. */
function readLimits(text: string, from: number, end: number): Limits {
  const start = skipSpaces(text, from)
  if (start >= end) throw new ReadError(words.limitsMissing, Math.max(0, from - 1), end)
  const term = readTerm(text, start, end)
  if (skipSpaces(text, term.to) < end)
    throw new ReadError(words.leftAfterLimits(clip(text.slice(term.to, end).trim())), term.to, end)
  return { value: positive(term.value, from, end), unit: term.unit, percent: isPercent(term.unit) }
}

const isPercent = (unit: CompoundUnit | undefined): boolean => unit?.symbol === '%' || unit?.symbol === '‰'

/** The limits in coherent SI. A bare limit takes the unit typed before it, else the field's. */
function toleranceOf(
  limits: Limits,
  reading: Reading,
  unit: CompoundUnit | undefined,
  field: DisplayUnit | undefined,
  from: number,
  end: number,
): number {
  const own = unit ?? (field?.notation ? undefined : field)
  if (limits.percent && !isPercent(own)) {
    if (own && own.offset !== 0) throw new ReadError(words.celsiusPercent, from, end)
    return Math.abs(reading.value) * limits.value * (limits.unit as CompoundUnit).factor
  }
  if (reading.notation === 'ratio' || (field?.notation === 'ratio' && !unit))
    throw new ReadError(words.ratioLimits, from, end)
  const scale = limits.unit ?? own
  const dimension = scale ? scale.dimension : (field?.dimension ?? D.NONE)
  if (dimension !== reading.dimension)
    throw new ReadError(words.limitsDiffer(aKind(dimension), aKind(reading.dimension)), from, end)
  return positive(limits.value * (scale?.factor ?? 1), from, end)
}

function positive(value: number, from: number, to: number): number {
  if (!(value >= 0 && Number.isFinite(value))) throw new ReadError(words.limitsOutOfRange, from, to)
  return value
}

function readNominal(text: string, start: number, end: number, field: DisplayUnit | undefined): Typed {
  const body = text.slice(start, end)
  const plain = (value: number, notation: Notation): Typed => ({
    reading: checked(field, start, end, { value, dimension: D.NONE, notation, offers: [] }),
    unit: undefined,
  })
  const marked = F_NUMBER.exec(body)
  if (marked) return plain(toNumber(marked[1] as string), 'f-number')
  const ratio = RATIO.exec(body)
  if (ratio) return plain(toNumber(ratio[1] as string) / toNumber(ratio[2] as string), 'ratio')
  const { value, last, terms } = readSum(text, start, end, field)
  const dimension = last.unit?.dimension ?? field?.dimension ?? last.dimension
  const shutter = /\d\s*\/\s*\d/.test(body) && dimension === D.TIME
  const reading = checked(field, start, end, {
    value,
    dimension,
    ...(shutter ? { notation: 'shutter' as const } : {}),
    offers: last.unit || terms > 1 ? [] : offersFor(last.value, body, field),
  })
  return { reading, unit: last.unit }
}

interface Sum {
  readonly value: number
  readonly last: Term
  readonly terms: number
}

/** A quantity, or several that add up: `5 ft 3 in`, `600 mm + 2 mm`. */
function readSum(text: string, start: number, end: number, field: DisplayUnit | undefined): Sum {
  let last = readTerm(text, start, end)
  let value = siValue(last, field)
  let terms = 1
  for (let at = skipSpaces(text, last.to); at < end; at = skipSpaces(text, last.to)) {
    const term = readTerm(text, at, end)
    refuseOddSum(last, term, field, text, at, start, end)
    const size = term.value * (term.unit ?? field ?? { factor: 1 }).factor
    // `−5 ft 3 in` is below zero as a whole.
    value += value < 0 && !/[+-]/.test(text[at] as string) ? -size : size
    last = term
    terms++
  }
  return { value, last, terms }
}

const siValue = (term: Term, field: DisplayUnit | undefined): number => {
  if (term.unit) return term.value * term.unit.factor + term.unit.offset
  if (field?.notation === 'ratio') return 1 / term.value
  return field ? term.value * field.factor + field.offset : term.value
}

function refuseOddSum(
  before: Term,
  term: Term,
  field: DisplayUnit | undefined,
  text: string,
  at: number,
  start: number,
  end: number,
): void {
  const signed = /[+-]/.test(text[at] as string)
  const [left, right] = [clip(text.slice(start, at).trim()), clip(text.slice(at, end))]
  if (term.unit?.dimension !== before.unit?.dimension || (!term.unit && field?.notation === 'ratio'))
    throw new ReadError(words.doesNotAdd(right, left), at, end)
  if (term.unit && term.unit.offset !== 0) throw new ReadError(words.temperatureDifference, at, end)
  if (!signed && before.unit && term.unit && term.unit.factor >= before.unit.factor)
    throw new ReadError(words.largerFirst, at, end)
}

function offersFor(value: number, body: string, field: DisplayUnit | undefined): Offer[] {
  if (!field || !(value > 0)) return []
  if (field.notation === 'ratio' && value !== 1) return [{ text: `${body}:1`, label: words.largerThanLife }]
  if (field.dimension === D.TIME && field.factor === 1 && value >= 2 && !body.includes('/'))
    return [{ text: `1/${body} s`, label: words.shutterTime }]
  return []
}

function checked(field: DisplayUnit | undefined, from: number, to: number, reading: Reading): Reading {
  if (!Number.isFinite(reading.value)) throw new ReadError(words.notFinite, from, to)
  if (field && reading.dimension !== field.dimension) {
    throw new ReadError(
      words.wrongKind(aKind(reading.dimension), aKind(field.dimension, words.quantity), field.symbol),
      from,
      to,
    )
  }
  return reading
}

/** How a reading is understood, to be shown beside what was typed; in the trade's notation where it was typed so. */
export const showReading = (reading: Reading, unit?: DisplayUnit): string => {
  const { value, dimension, tolerance, notation } = reading
  const typedAs: DisplayUnit | undefined = notation && {
    dimension,
    factor: 1,
    offset: 0,
    symbol: '',
    notation,
  }
  return showQuantity(value, dimension, { unit: typedAs ?? unit, tolerance }).text
}
