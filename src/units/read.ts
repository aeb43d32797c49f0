import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'
import type { DisplayUnit, Notation } from './display.ts'
import { exactBehind, type MarkedScale } from './marks.ts'
import { showQuantity } from './show.ts'
import { sameSigns } from './table.ts'
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

/** Signs that mean the same are made one; the length never changes, so positions stay those of the typed text. */
const evened = (text: string): string => sameSigns(text).replace(/\u2212/g, '-')

const toNumber = (text: string): number => Number(text.replace(new RegExp(GROUP, 'g'), '').replace(',', '.'))

interface Term {
  value: number
  dimension: Dimension
  /** Undefined where no unit was typed. */
  unit: CompoundUnit | undefined
  to: number
}

/** Reads a quantity as a technician types it, for a field of the given unit. Throws ReadError. */
export function readQuantity(typed: string, field?: DisplayUnit): Reading {
  const text = evened(typed)
  const start = text.length - text.trimStart().length
  const end = text.trimEnd().length
  if (start >= end) throw new ReadError('Nothing is filled in here.', 0, typed.length)
  refuseLookalikes(text)
  const plusMinus = /±|\+\s*\/\s*-/.exec(text)
  if (!plusMinus) return readNominal(text, start, end, field)
  const after = plusMinus.index + plusMinus[0].length
  const nominal = readNominal(text, start, text.slice(0, plusMinus.index).trimEnd().length, field)
  const tolerance = readTolerance(text, after, end, nominal, field)
  return { ...nominal, tolerance }
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

function readTolerance(
  text: string,
  from: number,
  end: number,
  nominal: Reading,
  field: DisplayUnit | undefined,
): number {
  const part = text.slice(from, end)
  if (part.trim() === '') throw new ReadError('How much more or less is missing after «±».', Math.max(0, from - 1), end)
  const relative = /^\s*([^%‰]+)([%‰])\s*$/.exec(part)
  if (relative && nominal.dimension !== D.NONE)
    return (
      Math.abs(nominal.value) *
      positive(toNumber((relative[1] as string).trim()) / (relative[2] === '%' ? 100 : 1000), from, end)
    )
  const typedUnit = /(?:[a-zA-Zµ°%‰′″].*)$/.exec(text.slice(0, from).replace(/\s*(?:±|\+\s*\/\s*-)$/, ''))
  // `600 mm ± 2` means ± 2 mm: a bare limit takes the unit typed before it, else the field's.
  const unit = typedUnit ? unitAfter(typedUnit[0]) : undefined
  const term = readTerm(text, skipSpaces(text, from), end)
  if (skipSpaces(text, term.to) < end)
    throw new ReadError(`«${text.slice(term.to, end).trim()}» is left over after the limits.`, term.to, end)
  const scale = term.unit ?? unit ?? (field?.notation ? undefined : field)
  const dimension = scale ? scale.dimension : D.NONE
  if (dimension !== nominal.dimension)
    throw new ReadError(`The limits are ${aKind(dimension)}, the value is ${aKind(nominal.dimension)}.`, from, end)
  return positive(term.value * (scale?.factor ?? 1), from, end)
}

const unitAfter = (text: string): CompoundUnit | undefined => {
  try {
    return readUnit(text)
  } catch {
    return undefined
  }
}

function positive(value: number, from: number, to: number): number {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new ReadError('Limits of error are a plain number, not below zero.', from, to)
  return value
}

function readNominal(text: string, start: number, end: number, field: DisplayUnit | undefined): Reading {
  const body = text.slice(start, end)
  const marked = F_NUMBER.exec(body)
  if (marked)
    return checked(field, start, end, {
      value: toNumber(marked[1] as string),
      dimension: D.NONE,
      notation: 'f-number',
      offers: [],
    })
  const ratio = RATIO.exec(body)
  if (ratio) {
    const value = toNumber(ratio[1] as string) / toNumber(ratio[2] as string)
    return checked(field, start, end, { value, dimension: D.NONE, notation: 'ratio', offers: [] })
  }
  let at = start
  let total = 0
  let last: Term | undefined
  while (at < end) {
    const term = readTerm(text, at, end)
    if (last) refuseOddSum(last, term, text, at, start, end)
    if (last?.unit && !term.unit)
      throw new ReadError(`A unit is missing after «${text.slice(at, term.to).trim()}».`, at, term.to)
    // `−5 ft 3 in` is below zero as a whole.
    total += last && total < 0 && !/^[+-]/.test(text.slice(at)) ? -siValue(term, field) : siValue(term, field)
    last = term
    at = skipSpaces(text, term.to)
  }
  const only = last as Term
  const dimension = only.unit?.dimension ?? field?.dimension ?? only.dimension
  const shutter = /\d\s*\/\s*\d/.test(body) && dimension === D.TIME
  return checked(field, start, end, {
    value: total,
    dimension,
    ...(shutter ? { notation: 'shutter' as const } : {}),
    offers: only.unit ? [] : offersFor(only.value, body, field),
  })
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
    throw new ReadError(
      'A number has one decimal sign; write thousands without a comma or point.',
      at,
      to,
      text.slice(0, at) + text.slice(at, to).replace(/[.,]/g, '') + text.slice(to, end),
    )
  }
  if (!Number.isFinite(value)) throw new ReadError('This number is too large to compute with.', at, numberEnd)
  const unitStart = skipSpaces(text, numberEnd)
  const unitText = unitTextAt(text.slice(unitStart, end))
  if (unitText === '') {
    const next = /^\d/.test(text.slice(unitStart, end)) ? text.slice(at, end) : undefined
    if (next) {
      const joined = next.replace(/(\d)\s+(?=\d)/g, '$1')
      throw new ReadError('A space inside a number: is it one number, or is a unit missing?', at, end, joined)
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

function refuseOddSum(before: Term, term: Term, text: string, at: number, start: number, end: number): void {
  const signed = /^[+-]/.test(text.slice(at))
  const fits = term.unit?.dimension === before.unit?.dimension
  if (!fits)
    throw new ReadError(
      `«${clip(text.slice(at, end))}» does not add to «${clip(text.slice(start, at).trim())}».`,
      at,
      end,
    )
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

/** Reads a size, `420 x 297`, `420 × 297 mm`, `16.5 in x 11.7 in`: width first. A unit at the end serves both. Throws ReadError. */
export function readSize(typed: string, field?: DisplayUnit): SizeReading {
  const cross = /(?<=[\d\s\]a-zµ′″])[x×*](?=\s*\d)|\bby\b/i.exec(typed)
  if (!cross) throw new ReadError('A size is width × height, such as 420 × 297.', 0, typed.length)
  const left = typed.slice(0, cross.index)
  const rightFrom = cross.index + cross[0].length
  const right = typed.slice(rightFrom)
  const height = shifted(rightFrom, () => readQuantity(right, field))
  const hasUnit = (part: string): boolean => /[a-zµ′″%\]]/i.test(part.replace(/±.*/, '').replace(/\d[eE]/, ''))
  const tail = hasUnit(left) ? '' : (/[\d)]\s*([a-zµ′″[].*)$/i.exec(right.replace(/\s*(±|\+\/-).*$/, ''))?.[1] ?? '')
  const width = shifted(0, () => readQuantity(tail ? `${left.trimEnd()} ${tail}` : left, field))
  const tolerance = width.tolerance ?? height.tolerance
  const limits = tolerance === undefined ? {} : { tolerance }
  return { width: { ...limits, ...width, offers: [] }, height: { ...limits, ...height, offers: [] } }
}

function shifted<T>(by: number, read: () => T): T {
  try {
    return read()
  } catch (error) {
    if (error instanceof ReadError) throw new ReadError(error.message, error.from + by, error.to + by)
    throw error
  }
}

/** How a reading is understood, to be shown beside what was typed. */
export const showReading = (reading: Reading, unit?: DisplayUnit): string => {
  if (reading.notation === 'shutter')
    return showQuantity(reading.value, reading.dimension, {
      unit: { ...(unit as DisplayUnit), symbol: 's', factor: 1, offset: 0, dimension: D.TIME, notation: 'shutter' },
    }).text
  return showQuantity(reading.value, reading.dimension, { unit, tolerance: reading.tolerance }).text
}

/** Replaces a marked figure by the exact value behind it (f/5.6 by 5.657); a value off the marks stays as it is. */
export const exactValue = (scale: MarkedScale, value: number): number => exactBehind(scale, value) ?? value
