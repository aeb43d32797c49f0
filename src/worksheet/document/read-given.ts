import {
  type Diagnostic,
  level,
  list,
  type NumberType,
  number,
  numberIn,
  problem,
  record,
  showTyped,
  TEXT,
  type Type,
  type Value,
  YES_NO,
} from '../../language/index.ts'
import {
  asShown,
  clip,
  type Dimension,
  type DisplayUnit,
  LENGTH,
  nearest,
  type Offer,
  ReadError,
  type Reading,
  readDisplayUnit,
  readQuantity,
  readSize,
  showQuantity,
  UnitTextError,
} from '../../units/index.ts'
import type { Given } from '../schema/document.ts'
import { type ConvertedReading, type MeterConstants, type MeterSign, readLight } from './light-reading.ts'
import * as words from './words.ts'

/** A given's text as understood. */
export interface GivenReading {
  /** Known from the unit even while nothing is filled in. */
  readonly type?: Type
  readonly value?: Value
  readonly tolerance?: number
  readonly readAs?: string
  /** The meter’s constant a reading of light was converted with: `C = 250`. */
  readonly by?: string
  /** The meters’ constants that converted it, of a list all of them. */
  readonly signs?: readonly MeterSign[]
  readonly offers: readonly Offer[]
  readonly error?: Diagnostic
}

export interface DeclaredUnit {
  readonly unit?: DisplayUnit
  readonly error?: Diagnostic
}

/** A sheet declares few units in many cells. */
const declared = new Map<string, DeclaredUnit>()
const MOST_DECLARED = 500

/** The unit a cell declares, or why it cannot be read. */
export function declaredUnit(text: string | undefined): DeclaredUnit {
  if (text === undefined || text.trim() === '') return {}
  const known = declared.get(text)
  if (known) return known
  if (declared.size >= MOST_DECLARED) declared.clear()
  const read = readDeclared(text)
  declared.set(text, read)
  return read
}

function readDeclared(text: string): DeclaredUnit {
  try {
    return { unit: readDisplayUnit(text) }
  } catch (error) {
    if (!(error instanceof UnitTextError)) throw error
    return { error: problem(words.unreadableUnit(error.message), 0, 0) }
  }
}

/** Whether a text that is no quantity is a width and a height. */
export function looksLikeSize(text: string, unit: DisplayUnit | undefined): boolean {
  // Found from both ends: one pattern for all three would try every digit with every other.
  const first = text.search(/\d/)
  const last = text.search(/\d\D*$/)
  if (first < 0 || !/[x×*]|\bby\b/i.test(text.slice(first, last))) return false
  try {
    readSize(text, unit)
    return true
  } catch (error) {
    if (error instanceof ReadError) return false
    throw error
  }
}

/** Reads what is filled in, as the cell's way of entry asks; light by the constants of the meters, as far as they are given. */
export function readGiven(given: Given, constants?: MeterConstants): GivenReading {
  const { unit, error } = declaredUnit(given.unit)
  if (error) return { error, offers: [] }
  const type = typeOfGiven(given, unit)
  const known = type ? { type } : {}
  if (given.value.trim() === '') return { ...known, offers: [] }
  try {
    return { ...known, ...readFilled(withFeetAndInches(given, unit), unit, constants) }
  } catch (caught) {
    if (!(caught instanceof ReadError)) throw caught
    return { ...known, offers: [], error: explainRead(caught, given.value) }
  }
}

/** In a field of a length `5' 3"` is feet and inches, with the marks of a keyboard or of a printer. */
function withFeetAndInches(given: Given, unit: DisplayUnit | undefined): Given {
  const takesMarks = unit?.dimension === LENGTH && /\d\s*(?:['"′″’”]|'')/.test(given.value)
  if (!takesMarks || !['quantity', 'size', 'list'].includes(given.entry ?? 'quantity')) return given
  const value = given.value
    .replace(/(?<=\d\s*)(?:["″”]|'')/g, ' in ')
    .replace(/(?<=\d\s*)['′’]/g, ' ft ')
    .replace(/\s+/g, ' ')
  return { ...given, value: value.trim() }
}

function typeOfGiven(given: Given, unit: DisplayUnit | undefined): Type | undefined {
  switch (given.entry ?? 'quantity') {
    case 'yes or no':
      return YES_NO
    case 'text':
    case 'date':
      return TEXT
    case 'choice':
      return unit ? numberIn(unit) : TEXT
    case 'list':
      return unit && list(numberIn(unit))
    case 'size':
      return unit && record('size', { width: number(unit.dimension), height: number(unit.dimension) })
    default:
      return unit && numberIn(unit)
  }
}

function readFilled(given: Given, unit: DisplayUnit | undefined, constants?: MeterConstants): GivenReading {
  const text = given.value
  switch (given.entry ?? 'quantity') {
    case 'yes or no':
      return { value: readYesNo(text), offers: [] }
    case 'text':
      return { value: text, offers: [] }
    case 'date':
      return { value: readDate(text), offers: [] }
    case 'choice':
      return readChoice(given, unit)
    case 'list':
      return readList(given, unit, constants)
    case 'size':
      return readSizeGiven(given, unit)
    default:
      if (looksLikeSize(text, unit)) throw new ReadError(words.sizeInQuantity, 0, text.length)
      return fromReading(readLight(text, unit, constants) ?? readQuantity(text, unit), given, unit)
  }
}

function readYesNo(text: string): boolean {
  const plain = text.trim().toLowerCase()
  if (plain === 'yes' || plain === 'no') return plain === 'yes'
  throw new ReadError(words.yesOrNo, 0, text.length)
}

function readDate(text: string): string {
  const plain = text.trim()
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(plain)
  const date = parts ? new Date(`${plain}T00:00:00Z`) : undefined
  if (!date || Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== plain)
    throw new ReadError(words.date, 0, text.length)
  return plain
}

function readChoice(given: Given, unit: DisplayUnit | undefined): GivenReading {
  const options = given.options ?? []
  if (!options.includes(given.value)) {
    const near = nearest(given.value, options)
    throw new ReadError(words.chooseOne(options), 0, given.value.length, near)
  }
  return unit ? fromReading(readQuantity(given.value, unit), given, unit) : { value: given.value, offers: [] }
}

function readSizeGiven(given: Given, unit: DisplayUnit | undefined): GivenReading {
  const { width, height } = readSize(given.value, unit)
  if (width.dimension !== height.dimension) throw new ReadError(words.sizeOfTwoKinds, 0, given.value.length)
  if (!unit && width.offers.length === 0 && !/[a-zµ′″]{2}|\b(m|in)\b/i.test(given.value.replace(/\bby\b/i, '')))
    throw new ReadError(words.sizeNeedsUnit, 0, given.value.length)
  for (const side of [width, height])
    if (!(side.value > 0)) throw new ReadError(words.sizeAboveZero, 0, given.value.length)
  checkRange(width.value, given, unit)
  checkRange(height.value, given, unit)
  const type = record('size', { width: number(width.dimension), height: number(height.dimension) })
  const first = showQuantity(width.value, width.dimension, { unit, typed: true })
  const second = showQuantity(height.value, height.dimension, { unit, tolerance: width.tolerance, typed: true })
  const readAs = `${first.figure} × ${second.text}`
  return {
    type,
    value: { width: width.value, height: height.value },
    readAs,
    offers: [],
    ...(width.tolerance === undefined ? {} : { tolerance: width.tolerance }),
  }
}

/** A value of a list. A comma alone between two digits, with a space or an end on either side of both figures, is a decimal one. */
const LISTED = /(?:[^,]|(?<=(?:^|,\s)[^,]*\d),(?=\d[^,]*(?:,\s|,?$)))+/g

/** Values of one kind. */
function readList(given: Given, unit: DisplayUnit | undefined, constants?: MeterConstants): GivenReading {
  const items: (Reading & Partial<ConvertedReading>)[] = []
  for (const part of given.value.matchAll(given.value.includes(';') ? /[^;]+/g : LISTED)) {
    if (part[0].trim() === '') continue
    items.push(readItem(part[0], part.index, unit, constants))
  }
  const first = items[0]
  if (!first) throw new ReadError(words.listIsEmpty, 0, given.value.length)
  for (const item of items) {
    if (item.dimension !== first.dimension) throw new ReadError(words.listOfTwoKinds, 0, given.value.length)
    if (item.tolerance !== undefined) throw new ReadError(words.listWithLimits, 0, given.value.length)
    checkRange(item.value, given, unit)
  }
  const type = list(unit ? numberIn(unit) : typeOfReading(first.dimension, given.value))
  const values = items.map(({ value }) => value)
  return {
    type,
    value: values,
    readAs: showTyped(values, type, unit).text.replace(/^\{|\}$/g, ''),
    ...convertedBy(items),
    offers: asTwo(given.value),
  }
}

/** By which constants readings of light were converted, each once. */
export function convertedBy(readings: readonly Partial<ConvertedReading>[]): Pick<GivenReading, 'by' | 'signs'> {
  const found = new Map(
    readings.flatMap(({ sign, by }): [MeterSign, string][] => (sign && by !== undefined ? [[sign, by]] : [])),
  )
  return found.size === 0 ? {} : { by: [...found.values()].join(', '), signs: [...found.keys()] }
}

/** `12,20` is read as 12.2; two values may have been meant. */
const asTwo = (text: string): Offer[] =>
  /^\s*\d+,\d+\s*$/.test(text) ? [{ text: text.trim().replace(',', ', '), label: words.twoValues }] : []

function readItem(
  text: string,
  at: number,
  unit: DisplayUnit | undefined,
  constants: MeterConstants | undefined,
): Reading & Partial<ConvertedReading> {
  try {
    return readLight(text, unit, constants) ?? readQuantity(text, unit)
  } catch (error) {
    if (error instanceof ReadError) throw new ReadError(error.message, error.from + at, error.to + at)
    throw error
  }
}

/** A quantity typed in EV or °C is a level, where the cell declares no unit. */
const typeOfReading = (dimension: Dimension, text: string): NumberType =>
  /\bEV\b|°C|℃/.test(text) ? level(dimension) : number(dimension)

function fromReading(
  reading: Reading & Partial<ConvertedReading>,
  given: Given,
  unit: DisplayUnit | undefined,
): GivenReading {
  checkRange(reading.value, given, unit)
  const notation =
    unit?.notation ?? (reading.notation === 'shutter' && !unit ? 'shutter' : unit ? undefined : reading.notation)
  const type = notation
    ? number(reading.dimension, notation)
    : unit
      ? numberIn(unit)
      : typeOfReading(reading.dimension, given.value)
  const shown = showTyped(
    reading.value,
    reading.notation === 'shutter' ? number(reading.dimension, 'shutter') : type,
    reading.notation === 'shutter' ? undefined : unit,
    reading.tolerance,
  )
  return {
    type,
    value: reading.value,
    readAs: shown.text,
    ...convertedBy([reading]),
    offers: reading.offers.filter(({ text }) => isAllowed(text, given, unit)),
    ...(reading.tolerance === undefined ? {} : { tolerance: reading.tolerance }),
  }
}

/** What the range of the cell refuses is not offered. */
function isAllowed(text: string, given: Given, unit: DisplayUnit | undefined): boolean {
  try {
    checkRange(readQuantity(text, unit).value, given, unit)
    return true
  } catch (error) {
    if (error instanceof ReadError) return false
    throw error
  }
}

/** Figures that differ by rounding alone are the same limit: 100 µm and 0.1 mm. */
const SLACK = 1e-12

/** Refuses a value outside the range the cell gives. */
function checkRange(value: number, given: Given, unit: DisplayUnit | undefined): void {
  const refuse = (message: string): never => {
    throw new ReadError(message, 0, given.value.length)
  }
  const limit = (text: string | undefined): number | undefined => {
    if (text === undefined || text.trim() === '') return undefined
    try {
      return readQuantity(text, unit).value
    } catch (error) {
      if (!(error instanceof ReadError)) throw error
      return refuse(words.unreadableRange(clip(text), error.message))
    }
  }
  const least = limit(given.least)
  const most = limit(given.most)
  const slack = SLACK * Math.abs(value)
  if (least !== undefined && value < least - slack) refuse(words.atLeast(asShown(String(given.least))))
  if (most !== undefined && value > most + slack) refuse(words.atMost(asShown(String(given.most))))
  if (given.whole) checkWhole(value, given.value)
}

/** Refuses a fraction of what is counted; the text is said to be wrong as a whole. */
export function checkWhole(value: number, text: string): number {
  if (Math.abs(value - Math.round(value)) <= SLACK * Math.abs(value)) return value
  throw new ReadError(words.whole(Math.floor(value)), 0, text.length)
}

/** What is wrong with a text that could not be read, with how to write it instead. */
export const explainRead = (error: ReadError, text: string): Diagnostic =>
  problem(
    error.message,
    error.from,
    error.to,
    error.fix === undefined ? [] : [{ label: words.write(error.fix), from: 0, to: text.length, insert: error.fix }],
  )
