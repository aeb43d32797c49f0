import { type Diagnostic, number, TEXT, type Type, type Value, YES_NO } from '../../language/index.ts'
import { aKind, type DisplayUnit, NONE, nearest, ReadError, readQuantity } from '../../units/index.ts'
import { checkWhole, declaredUnit } from '../document/read-given.ts'
import { chooseOne, noOptions, yesOrNo } from '../document/words.ts'
import type { Column } from '../schema/document.ts'
import { readDate, readDateTime, readTime } from './date-time.ts'
import * as words from './words.ts'

/** Reading a table's fields, row by row, without a sheet: a hundred thousand rows are fine. */

/** What a column's fields are read as. */
export interface ReadColumn {
  readonly column: Column
  /** Undefined for a column with a formula, and where its unit cannot be read. */
  readonly type: Type | undefined
  readonly unit: DisplayUnit | undefined
  /** Why its unit cannot be read. */
  readonly error?: Diagnostic
  /** A non-empty field as a value in coherent SI. Throws ReadError. */
  readonly read: (text: string) => Value
}

/** Why a row does not count: a field that is empty or cannot be read. */
export interface FieldError {
  /** The column's place, from 0. */
  readonly column: number
  readonly message: string
  readonly from: number
  readonly to: number
  /** What might be written instead. */
  readonly fix?: string
  /** The field is empty, and its column must be filled in. */
  readonly empty?: true
}

export interface RowReading {
  /** By column, in coherent SI; undefined where a field is empty or cannot be read, and in columns with a formula. */
  readonly values: readonly (Value | undefined)[]
  readonly problems: readonly FieldError[]
  /** Nothing is filled in at all: such a row neither counts nor is missed. */
  readonly isBlank: boolean
}

export interface RowReader {
  readonly columns: readonly ReadColumn[]
  /** Reads a row; the same array again is not read anew. */
  readonly read: (row: readonly string[]) => RowReading
}

const SOUND: readonly FieldError[] = Object.freeze([])

/** Worked out for each row; while its formula is empty, it waits for one. */
export const hasFormula = ({ formula }: Column): boolean => formula !== undefined

/** A table is read as long as it is open: the last few readers are cached, with the rows they have read. */
const readers = new Map<string, RowReader>()
const MOST_READERS = 20
const byColumns = new WeakMap<readonly Column[], RowReader>()

/** What reads the rows of a table with these columns. Names and labels make no difference to it. */
export function rowReader(columns: readonly Column[]): RowReader {
  const known = byColumns.get(columns)
  if (known) return known
  const key = JSON.stringify(
    columns.map((column) => [
      column.entry ?? 'quantity',
      column.unit ?? '',
      hasFormula(column),
      column.may_be_empty === true,
      column.whole === true,
      column.entry === 'choice' ? (column.options ?? []) : [],
      column.default ?? '',
    ]),
  )
  const cached = readers.get(key)
  // Its columns are those of another time: names and labels may differ.
  const reader = cached ? { columns: columns.map(readColumn), read: cached.read } : newReader(columns)
  readers.delete(key)
  readers.set(key, reader)
  if (readers.size > MOST_READERS) readers.delete(readers.keys().next().value as string)
  byColumns.set(columns, reader)
  return reader
}

function newReader(columns: readonly Column[]): RowReader {
  const read = columns.map(readColumn)
  const known = new WeakMap<readonly string[], RowReading>()
  return {
    columns: read,
    read: (row) => {
      const before = known.get(row)
      if (before) return before
      const reading = readRow(read, row)
      known.set(row, reading)
      return reading
    },
  }
}

function readRow(columns: readonly ReadColumn[], row: readonly string[]): RowReading {
  const values: (Value | undefined)[] = new Array(columns.length).fill(undefined)
  let problems: FieldError[] | undefined
  let isBlank = true
  for (let at = 0; at < columns.length; at++) {
    const { column, read, type } = columns[at] as ReadColumn
    if (!type) continue
    const own = row[at] ?? ''
    if (own.trim() !== '') isBlank = false
    const text = own.trim() === '' ? (column.default ?? '') : own
    const isEmpty = text.trim() === ''
    if (isEmpty && column.entry !== 'tick') {
      if (column.may_be_empty !== true) {
        problems ??= []
        problems.push({ column: at, message: words.emptyField, from: 0, to: text.length, empty: true })
      }
      continue
    }
    try {
      values[at] = read(text)
    } catch (error) {
      if (!(error instanceof ReadError)) throw error
      const { message, from, to } = error
      // A fix that cannot be read either is dropped.
      const fix = error.fix !== undefined && isReadBy(read, error.fix) ? error.fix : undefined
      problems ??= []
      problems.push({ column: at, message, from, to, ...(fix === undefined ? {} : { fix }) })
    }
  }
  return isBlank
    ? { values: values.fill(undefined), problems: SOUND, isBlank }
    : { values, problems: problems ?? SOUND, isBlank }
}

/** Whether a field can be read. */
export function isReadBy(read: ReadColumn['read'], text: string): boolean {
  try {
    read(text)
    return true
  } catch (error) {
    if (error instanceof ReadError) return false
    throw error
  }
}

/** How the fields of one column are read. */
export function readColumn(column: Column): ReadColumn {
  const { unit, error } = declaredUnit(column.unit)
  const entry = column.entry ?? 'quantity'
  if (hasFormula(column)) return { column, type: undefined, unit, ...(error ? { error } : {}), read: asText }
  switch (entry) {
    case 'text':
      return { column, type: TEXT, unit: undefined, read: asText }
    case 'tick':
      return { column, type: YES_NO, unit: undefined, read: readTick }
    case 'date':
      return { column, type: TEXT, unit: undefined, read: readDate }
    case 'time':
      return { column, type: TEXT, unit: undefined, read: readTime }
    case 'date and time':
      return { column, type: TEXT, unit: undefined, read: readDateTime }
    case 'choice': {
      if (error) return { column, type: undefined, unit: undefined, error, read: asText }
      const choose = (text: string): string => readChoice(text, column.options ?? [])
      if (!unit) return { column, type: TEXT, unit: undefined, read: choose }
      const read = quantityReader(unit)
      return { column, type: number(unit.dimension, unit.notation), unit, read: (text) => read(choose(text)) }
    }
    case 'quantity': {
      if (error) return { column, type: undefined, unit: undefined, error, read: asText }
      const read = quantityReader(unit)
      return {
        column,
        type: number(unit?.dimension ?? NONE, unit?.notation),
        unit,
        read: column.whole ? (text) => checkWhole(read(text), text) : read,
      }
    }
  }
}

/** Spaces at the ends come along when a table is pasted. */
const asText = (text: string): string => text.trim()

const PLAIN = /^\s*[+-]?\d{1,15}(?:[.,]\d{1,15})?\s*$/

function quantityReader(unit: DisplayUnit | undefined): (text: string) => number {
  const dimension = unit?.dimension ?? NONE
  const slowly = (text: string): number => {
    const reading = readQuantity(text, unit)
    if (reading.dimension === dimension) return reading.value
    throw new ReadError(
      unit ? words.otherKind(aKind(dimension), aKind(reading.dimension)) : words.plainNumbers(aKind(reading.dimension)),
      0,
      text.length,
    )
  }
  if (unit?.notation) return slowly
  const factor = unit?.factor ?? 1
  const offset = unit?.offset ?? 0
  // Nearly every field is a bare number.
  return (text) => (PLAIN.test(text) ? Number(text.replace(',', '.')) * factor + offset : slowly(text))
}

const TICKED: ReadonlyMap<string, boolean> = new Map([
  ['', false],
  ...['yes', 'true', 'x', '✓', '✔', '1'].map((word) => [word, true] as const),
  ...['no', 'false', '0', '-', '–'].map((word) => [word, false] as const),
])

/** As a tick: `yes`, `true`, `x`, `1`; an empty field is a no. */
function readTick(text: string): boolean {
  const ticked = TICKED.get(text.trim().toLowerCase())
  if (ticked === undefined) throw new ReadError(yesOrNo, 0, text.length)
  return ticked
}

/** One of the options, however it is capitalised. */
function readChoice(text: string, options: readonly string[]): string {
  const plain = text.trim()
  const found =
    options.find((option) => option.trim() === plain) ??
    options.find((option) => option.trim().toLowerCase() === plain.toLowerCase())
  if (found !== undefined) return found.trim()
  if (options.length === 0) throw new ReadError(noOptions, 0, text.length)
  throw new ReadError(chooseOne(options), 0, text.length, nearest(plain, options))
}
