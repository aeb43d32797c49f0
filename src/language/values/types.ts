import {
  aKind,
  type Dimension,
  type DisplayUnit,
  NONE,
  type Notation,
  nameOf,
  type Shown,
  type ShowOptions,
  STOP,
  showFigure,
  showQuantity,
} from '../../units/index.ts'
import * as words from './words.ts'

/** What kind of value a formula gives; settled before anything is computed. */
export type Type = NumberType | YesNoType | TextType | ListType | RecordType

export interface NumberType {
  readonly kind: 'number'
  readonly dimension: Dimension
  /** How the trade writes it, where the value came from such a notation or is always written so. */
  readonly notation?: Notation
  /**
   * Whether the number is a level, a position on a scale whose zero is a convention, rather than a difference of two
   * levels: an exposure value against stops, a Celsius temperature against kelvins. Two levels have a difference and
   * no sum (the distinction of IEC 80000-15).
   */
  readonly level?: true
}
export interface YesNoType {
  readonly kind: 'yes or no'
}
export interface TextType {
  readonly kind: 'text'
}
export interface ListType {
  readonly kind: 'list'
  readonly of: Type
}
export interface RecordType {
  readonly kind: 'record'
  /** What the record is, in one or two words: `lamp`, `field evenness`. */
  readonly name: string
  readonly parts: Readonly<Record<string, Type>>
}

/** Numbers are in coherent SI. */
export type Value = number | boolean | string | readonly Value[] | RecordValue
export interface RecordValue {
  readonly [part: string]: Value
}

/** The type of numbers of a dimension, with the notation they are shown in. */
export const number = (dimension: Dimension, notation?: Notation): NumberType =>
  notation ? { kind: 'number', dimension, notation } : { kind: 'number', dimension }
/** A level, such as an exposure value; its differences are plain quantities of the same dimension. */
export const level = (dimension: Dimension): NumberType => ({ kind: 'number', dimension, level: true })
/** Whether a type is a level, such as an exposure value, and not a difference of two. */
export const isLevel = (type: Type): boolean => type.kind === 'number' && type.level === true

/** The unit of exposure values; the same interval as a difference is a stop. */
export const LEVEL_UNIT = 'EV'

/** The type of a quantity declared or written in a unit: exposure values and Celsius temperatures are levels. */
export const numberIn = ({ dimension, notation, symbol, offset }: DisplayUnit): NumberType =>
  symbol === LEVEL_UNIT || offset !== 0 ? level(dimension) : number(dimension, notation)

export const YES_NO: YesNoType = { kind: 'yes or no' }
export const TEXT: TextType = { kind: 'text' }
/** The type of lists whose items are of one type. */
export const list = (of: Type): ListType => ({ kind: 'list', of })
/** The type of records with these parts. */
export const record = (name: string, parts: Readonly<Record<string, Type>>): RecordType => ({
  kind: 'record',
  name,
  // A null prototype prevents `constructor` and the like from being found as parts.
  parts: Object.freeze(Object.assign(Object.create(null), parts)),
})
export const PLAIN_NUMBER = number(NONE)

/** Whether two types are the same, whatever notation they are shown in. */
export function sameType(a: Type, b: Type): boolean {
  if (a.kind === 'number' && b.kind === 'number') return a.dimension === b.dimension
  if (a.kind === 'list' && b.kind === 'list') return sameType(a.of, b.of)
  if (a.kind === 'record' && b.kind === 'record') {
    const names = Object.keys(a.parts)
    return (
      names.length === Object.keys(b.parts).length &&
      names.every((name) => b.parts[name] !== undefined && sameType(a.parts[name] as Type, b.parts[name]))
    )
  }
  return a.kind === b.kind
}

/** A type in words, with its article: `a length`, `a list of lamps`. */
export function describeType(type: Type): string {
  if (type.kind === 'number') return type.level && type.dimension === STOP ? words.exposureValue : aKind(type.dimension)
  if (type.kind === 'yes or no') return 'yes or no'
  if (type.kind === 'text') return 'text'
  if (type.kind === 'record') return words.aRecord(type.name)
  if (type.of.kind === 'number' && type.of.dimension === NONE) return words.listOfNumbers
  if (type.of.kind === 'record') return words.listOfRecords(type.of.name)
  return words.listOf(describeType(type.of))
}

/** The name of a type for other programs: a dimension's name, `yes or no`, `text`, `list of …`, the record's name. */
export function typeName(type: Type): string {
  if (type.kind === 'number') return nameOf(type.dimension)
  if (type.kind === 'list') return `list of ${typeName(type.of)}`
  return type.kind === 'record' ? type.name : type.kind
}

const NOTATION_UNITS: Readonly<Record<Notation, DisplayUnit>> = {
  'f-number': { dimension: NONE, factor: 1, offset: 0, symbol: '', notation: 'f-number' },
  ratio: { dimension: NONE, factor: 1, offset: 0, symbol: '', notation: 'ratio' },
  shutter: { dimension: NONE, factor: 1, offset: 0, symbol: 's', notation: 'shutter' },
}

/** Without a declared unit an exposure value is shown in EV, so that it is not taken for a difference. */
const exposureUnit = ({ level, dimension }: NumberType): DisplayUnit | undefined =>
  level && dimension === STOP ? { dimension, factor: 1, offset: 0, symbol: LEVEL_UNIT } : undefined

const LIST_SHOWN_UP_TO = 12

/** Shows any value legibly; a declared unit serves numbers and lists of numbers. */
export const showValue = (value: Value, type: Type, unit?: DisplayUnit, tolerance?: number): Shown =>
  showAs(value, type, { unit, tolerance })

/** Shows a value that was typed, or is part of one: as `showValue`, but no digit of it is dropped. */
export const showTyped = (value: Value, type: Type, unit?: DisplayUnit, tolerance?: number): Shown =>
  showAs(value, type, { unit, tolerance, typed: true })

function showAs(value: Value, type: Type, options: ShowOptions): Shown {
  if (type.kind === 'number') {
    const unit = options.unit ?? (type.notation ? NOTATION_UNITS[type.notation] : exposureUnit(type))
    return showQuantity(value as number, type.dimension, { ...options, unit })
  }
  const money = type.kind === 'record' ? showMoney(value as RecordValue) : undefined
  if (money) return money
  const size = type.kind === 'record' ? showSize(value as RecordValue, type, options) : undefined
  if (size) return size
  const text = showWhole(value, type, options)
  return { figure: text, unit: '', text }
}

function showWhole(value: Value, type: Type, { unit, typed }: ShowOptions): string {
  if (type.kind === 'yes or no') return value ? 'yes' : 'no'
  if (type.kind === 'text') return String(value)
  if (type.kind === 'list') {
    const items = value as readonly Value[]
    const fits = type.of.kind === 'number' && unit?.dimension === type.of.dimension ? unit : undefined
    const shown = items.slice(0, typed ? items.length : LIST_SHOWN_UP_TO).map((item) => {
      const { text } = showAs(item, type.of, { unit: fits, typed })
      return type.of.kind === 'record' ? `(${text})` : text
    })
    const more = items.length - shown.length
    return `{${shown.join(', ')}${more > 0 ? `, ${words.moreValues(more)}` : ''}}`
  }
  const parts = value as RecordValue
  // A record may lack parts: of a frame, what has not been measured.
  return Object.entries((type as RecordType).parts)
    .flatMap(([name, part]) => {
      const value = parts[name]
      return value === undefined ? [] : [`${name} ${showAs(value, part, { typed }).text}`]
    })
    .join(', ')
}

/** A size as one writes it, `420 × 297 mm`: a record of a width and a height in one unit, and of nothing else. */
function showSize(parts: RecordValue, type: RecordType, { unit, typed }: ShowOptions): Shown | undefined {
  const { width, height, ...others } = type.parts
  if (width?.kind !== 'number' || height?.kind !== 'number' || Object.keys(others).length > 0) return undefined
  if (typeof parts.width !== 'number' || typeof parts.height !== 'number') return undefined
  const fits = unit?.dimension === width.dimension ? unit : undefined
  const own = { unit: fits, typed }
  const [across, down] = [showAs(parts.width, width, own), showAs(parts.height, height, own)]
  if (across.unit !== down.unit) return undefined
  const figure = `${across.figure} × ${down.figure}`
  return { figure, unit: across.unit, text: across.text.replace(across.figure, figure) }
}

/** An amount with the decimals its currency has; as one text the code of ISO 4217 goes first: `EUR 1350.00`, `JPY 1350`. */
function showMoney({ amount, currency }: RecordValue): Shown | undefined {
  if (typeof amount !== 'number' || typeof currency !== 'string' || !/^[A-Z]{3}$/.test(currency)) return undefined
  const { maximumFractionDigits } = new Intl.NumberFormat('en-GB', { style: 'currency', currency }).resolvedOptions()
  const figure = showFigure(amount, maximumFractionDigits)
  return { figure, unit: currency, text: `${currency} ${figure}` }
}
