import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'
import type { DisplayUnit, Notation } from './display.ts'
import { showQuantity } from './show.ts'
import { type CompoundUnit, readUnit, UnitTextError } from './unit-text.ts'

/** Another way the text could have been meant, to be taken with one press. */
export interface Offer {
  /** What to put in the field instead. */
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

/** Why a typed value cannot be read: what, where in the text, and how to mend it. */
export class ReadError extends Error {
  constructor(
    message: string,
    readonly from: number,
    readonly to: number,
    readonly mend?: string,
  ) {
    super(message)
  }
}

const GROUP = '[\\u00a0\\u2009\\u202f]'
const NUMBER = `(?:\\d+(?:${GROUP}\\d+)*)(?:[.,]\\d+)?(?:[eE][+\\-]?\\d+)?`
const SIGNED = new RegExp(`^[+\\-]?${NUMBER}`)
const F_NUMBER = new RegExp(`^[fFƒ]\\s*/?\\s*(${NUMBER})$`)
const RATIO = new RegExp(`^(${NUMBER})\\s*:\\s*(${NUMBER})$`)
const FRACTION = new RegExp(`^([+\\-]?)(?:(\\d+)\\s+)?(${NUMBER})\\s*/\\s*(${NUMBER})(?!\\s*\\d)`)

/** No quantity is longer; what is pasted by mistake is refused before it is looked at. */
const LONGEST = 1000

/** Signs that mean the same are made one; the length never changes, so positions stay those of the typed text. */
const evened = (text: string): string => text.replace(/\u2212/g, '-')

const toNumber = (text: string): number => Number(text.replace(new RegExp(GROUP, 'g'), '').replace(',', '.'))

interface Term {
  value: number
  dimension: Dimension
  /** Undefined where no unit was typed. */
  unit: CompoundUnit | undefined
  to: number
}

/** Reads a quantity as a technician types it, for a field of the given unit. Throws ReadError. */
export const readQuantity = (typed: string, field?: DisplayUnit): Reading => readTyped(typed, field).reading

interface Typed {
  readonly reading: Reading
  /** The unit that was typed, if one was. */
  readonly unit: CompoundUnit | undefined
}

function readTyped(typed: string, field: DisplayUnit | undefined): Typed {
  const text = evened(typed)
  const start = text.length - text.trimStart().length
  const end = text.trimEnd().length
  if (start >= end) throw new ReadError('Nothing is filled in here.', 0, typed.length)
  refuseLong(text)
  refuseLookalikes(text)
  const plusMinus = /±|\+\s*\/\s*-/.exec(text)
  if (!plusMinus) return readNominal(text, start, end, field)
  const after = plusMinus.index + plusMinus[0].length
  const nominalEnd = text.slice(0, plusMinus.index).trimEnd().length
  const limits = readLimits(text, after, end)
  const { reading: plain, unit: own } = readNominal(text, start, nominalEnd, undefined)
  // `600 ± 2 mm` is 600 mm: a unit typed only behind the limits serves both.
  const shared = own || plain.notation || limits.percent ? undefined : limits.unit
  const nominal = readNominal(text, start, nominalEnd, shared ?? field)
  const tolerance = toleranceOf(limits, nominal.reading, own ?? shared, field, after, end)
  const offers = shared ? [] : nominal.reading.offers
  return { reading: { ...checked(field, start, end, nominal.reading), tolerance, offers }, unit: own ?? shared }
}

function refuseLong(text: string): void {
  if (text.length > LONGEST)
    throw new ReadError(`This is longer than the ${LONGEST} characters a quantity may have.`, LONGEST, text.length)
}

function refuseLookalikes(text: string): void {
  const dash = text.search(/[\u2012-\u2015]/)
  if (dash >= 0)
    throw new ReadError(
      'A long dash is not a minus sign; type «-».',
      dash,
      dash + 1,
      text.replace(/[\u2012-\u2015]/g, '-'),
    )
  const wrong = text.search(/\+-|-\+/)
  if (wrong >= 0) throw new ReadError('For limits of error write «±».', wrong, wrong + 2, text.replace(/\+-|-\+/, '±'))
}

interface Limits {
  readonly value: number
  readonly unit: CompoundUnit | undefined
  readonly percent: boolean
}

/** What stands after the ±. */
function readLimits(text: string, from: number, end: number): Limits {
  const start = skipSpaces(text, from)
  if (start >= end) throw new ReadError('How much more or less is missing after «±».', Math.max(0, from - 1), end)
  const term = readTerm(text, start, end)
  if (skipSpaces(text, term.to) < end)
    throw new ReadError(`«${clip(text.slice(term.to, end).trim())}» is left over after the limits.`, term.to, end)
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
    if (own && own.offset !== 0)
      throw new ReadError('A temperature in °C has no per cent of itself; give the limits in K.', from, end)
    return Math.abs(reading.value) * limits.value * (limits.unit as CompoundUnit).factor
  }
  if (reading.notation === 'ratio' || (field?.notation === 'ratio' && !unit))
    throw new ReadError('Give the limits of a ratio in per cent.', from, end)
  const scale = limits.unit ?? own
  const dimension = scale ? scale.dimension : (field?.dimension ?? D.NONE)
  if (dimension !== reading.dimension)
    throw new ReadError(`The limits are ${aKind(dimension)}, the value is ${aKind(reading.dimension)}.`, from, end)
  return positive(limits.value * (scale?.factor ?? 1), from, end)
}

function positive(value: number, from: number, to: number): number {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new ReadError('Limits of error are a plain number, not below zero.', from, to)
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

const skipSpaces = (text: string, at: number): number => at + (/^\s*/.exec(text.slice(at)) as RegExpExecArray)[0].length

/** A number or a fraction and the unit behind it, up to the next number or the end. */
function readTerm(text: string, at: number, end: number): Term {
  const rest = text.slice(at, end)
  let value: number
  let length: number
  const fraction = FRACTION.exec(rest)
  if (fraction) {
    const [all, sign, whole, above, below] = fraction as unknown as [string, string, string | undefined, string, string]
    value = (sign === '-' ? -1 : 1) * ((whole ? toNumber(whole) : 0) + toNumber(above) / toNumber(below))
    length = all.length
  } else {
    const sign = /^[+-]\s+/.exec(rest)?.[0].length ?? 0
    const match = SIGNED.exec(sign ? rest[0] + rest.slice(sign) : rest)
    if (!match) throw noNumber(text, at, end)
    value = toNumber(match[0])
    length = match[0].length + (sign ? sign - 1 : 0)
  }
  const numberEnd = at + length
  if (/^[.,]/.test(text.slice(numberEnd, end))) {
    const extra = /^[.,\d]*/.exec(text.slice(numberEnd, end))?.[0] ?? ''
    const to = numberEnd + extra.length
    const mended = oneDecimalSign(text.slice(at, to))
    throw new ReadError(
      'A number has one decimal sign; write thousands without a comma or point.',
      at,
      to,
      mended === undefined ? undefined : text.slice(0, at) + mended + text.slice(to),
    )
  }
  if (fraction && toNumber(fraction[4] as string) === 0)
    throw new ReadError('A fraction cannot have nothing below its line.', at, numberEnd)
  if (!Number.isFinite(value)) throw new ReadError('This number is too large to compute with.', at, numberEnd)
  const unitStart = skipSpaces(text, numberEnd)
  const unitText = unitTextAt(text.slice(unitStart, end))
  if (unitText === '') {
    if (/\d/.test(text[unitStart] ?? '') && unitStart < end) {
      const joined = text.slice(at, end).replace(/(\d)\s+(?=\d)/g, '$1')
      throw new ReadError(
        'A space inside a number: is it one number, or is a unit missing?',
        at,
        end,
        text.slice(0, at) + joined + text.slice(end),
      )
    }
    return { value, dimension: D.NONE, unit: undefined, to: numberEnd }
  }
  const bracketed = /^\[(.*)\]$/.exec(unitText)
  const shift = unitStart + (bracketed ? 1 : 0)
  try {
    const unit = readUnit(bracketed ? (bracketed[1] as string) : unitText)
    return { value, dimension: unit.dimension, unit, to: unitStart + unitText.length }
  } catch (error) {
    if (error instanceof UnitTextError)
      throw new ReadError(
        error.message,
        shift + error.from,
        shift + error.to,
        error.mend && text.slice(0, shift + error.from) + error.mend + text.slice(shift + error.to),
      )
    throw error
  }
}

/** Thousands run together where the signs say which is which: `1,234.5`, `1.234.567`; else no mend is sure. */
function oneDecimalSign(number: string): string | undefined {
  const thousands = /^[+-]?\d{1,3}(?:([.,])\d{3})(?:\1\d{3})*(?:[.,]\d*)?$/.exec(number)
  if (/^[+-]?\d+[.,]$/.test(number)) return number.slice(0, -1)
  return thousands ? number.replaceAll(thousands[1] as string, '') : undefined
}

/** The unit's text runs to the next number that is not a power, or to a sign that starts another term. */
function unitTextAt(rest: string): string {
  if (rest.startsWith('[')) return rest.slice(0, rest.indexOf(']') + 1 || rest.length)
  const match = /^(?:1\/)?(?:[^\d+\-±^]|\^\s*-?\d+)*/.exec(rest)
  return (match?.[0] ?? '').trimEnd()
}

function noNumber(text: string, at: number, end: number): ReadError {
  const rest = text.slice(at, end)
  const point = /^([+-]?)([.,])(\d+)/.exec(rest)
  if (point)
    return new ReadError(
      'Write a zero before the decimal sign.',
      at,
      at + point[0].length,
      text.slice(0, at) + rest.replace(/^([+-]?)[.,]/, '$10.') + text.slice(end),
    )
  return new ReadError(`«${clip(rest)}» is not a number.`, at, end)
}

export const clip = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text)

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
    throw new ReadError(`«${right}» does not add to «${left}».`, at, end)
  if (term.unit && term.unit.offset !== 0)
    throw new ReadError('What is added to a temperature or taken from it is a difference, in K.', at, end)
  if (!signed && before.unit && term.unit && term.unit.factor >= before.unit.factor)
    throw new ReadError(
      'Two quantities without a sign between them: write the larger unit first, or put a + between.',
      at,
      end,
    )
}

function offersFor(value: number, body: string, field: DisplayUnit | undefined): Offer[] {
  if (!field || !(value > 0)) return []
  if (field.notation === 'ratio' && value !== 1) return [{ text: `${body}:1`, label: 'larger than life' }]
  if (field.dimension === D.TIME && field.factor === 1 && value >= 2 && !body.includes('/'))
    return [{ text: `1/${body} s`, label: 'a shutter time' }]
  return []
}

const KINDS: readonly (readonly [Dimension, string])[] = [
  [D.NONE, 'a plain number'],
  [D.TIME, 'a time'],
  [D.STOP, 'a number of stops'],
  [D.PIXEL, 'a number of pixels'],
  [D.DATA, 'an amount of data'],
]

/** A dimension in words, with its article: `a length`, `an illuminance`. */
export function aKind(dimension: Dimension): string {
  const known = KINDS.find(([d]) => d === dimension)?.[1]
  if (known) return known
  return `${/^[aeiou]/.test(dimension.name) ? 'an' : 'a'} ${dimension.name}`
}

function checked(field: DisplayUnit | undefined, from: number, to: number, reading: Reading): Reading {
  if (!Number.isFinite(reading.value)) throw new ReadError('This is not a finite number.', from, to)
  if (field && reading.dimension !== field.dimension) {
    const example = field.symbol ? ` in ${field.symbol}` : ''
    throw new ReadError(
      `This is ${aKind(reading.dimension)}; the field takes ${aKind(field.dimension)}${example}.`,
      from,
      to,
    )
  }
  return reading
}

export interface SizeReading {
  readonly width: Reading
  readonly height: Reading
}

/** Reads a size, `420 x 297`, `420 × 297 mm`, `16.5 in x 11.7 in`: width first. A unit typed once serves both. Throws ReadError. */
export function readSize(typed: string, field?: DisplayUnit): SizeReading {
  refuseLong(typed)
  const cross = /(?<=[\d\s\]a-zµ′″])[x×*](?=\s*\d)|\bby\b/i.exec(typed)
  if (!cross) throw new ReadError('A size is width × height, such as 420 × 297.', 0, typed.length)
  const rightFrom = cross.index + cross[0].length
  const read = (side: 'left' | 'right', unit: DisplayUnit | undefined): Typed =>
    side === 'left'
      ? within(typed, 0, cross.index, (part) => readTyped(part, unit))
      : within(typed, rightFrom, typed.length, (part) => readTyped(part, unit))
  let [width, height] = [read('left', undefined), read('right', undefined)]
  const shared = width.unit ?? height.unit
  width = read('left', width.unit ? field : (shared ?? field))
  height = read('right', height.unit ? field : (shared ?? field))
  if (width.reading.dimension !== height.reading.dimension)
    throw new ReadError(
      `The width is ${aKind(width.reading.dimension)}, the height ${aKind(height.reading.dimension)}.`,
      0,
      typed.length,
    )
  const tolerance = width.reading.tolerance ?? height.reading.tolerance
  const limits = tolerance === undefined ? {} : { tolerance }
  return { width: { ...limits, ...width.reading, offers: [] }, height: { ...limits, ...height.reading, offers: [] } }
}

/** Reads a part of the text; what is wrong in it is told by its place in the whole. */
function within<T>(typed: string, from: number, to: number, read: (part: string) => T): T {
  try {
    return read(typed.slice(from, to))
  } catch (error) {
    if (error instanceof ReadError)
      throw new ReadError(
        error.message,
        error.from + from,
        error.to + from,
        error.mend && typed.slice(0, from) + error.mend + typed.slice(to),
      )
    throw error
  }
}

/** How a reading is understood, to be shown beside what was typed; in the trade's notation where it was typed so. */
export const showReading = (reading: Reading, unit?: DisplayUnit): string => {
  const { value, dimension, tolerance, notation } = reading
  const typedAs: DisplayUnit | undefined = notation && {
    dimension,
    factor: 1,
    offset: 0,
    symbol: notation === 'shutter' ? 's' : '',
    notation,
  }
  return showQuantity(value, dimension, { unit: typedAs ?? unit, tolerance }).text
}
