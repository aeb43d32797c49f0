import { allMarks, type DisplayUnit, defaultUnit, ReadError, readQuantity, STOP, TIME } from '../../units/index.ts'
import { notationUnit } from '../document/measured.ts'
import { declaredUnit } from '../document/read-given.ts'
import type { Given, Range } from '../schema/document.ts'
import { figureIn, formatInput, type NumericOutcome } from './format-input.ts'
import { typedDisplayUnit } from './typed-unit.ts'
import * as words from './words.ts'

/** A value of the range: as it would be typed into the given, and as read, in coherent SI. */
export interface RangeValue {
  readonly text: string
  readonly value: number
}

/** Why a range has no values yet: which of its fields, and what to do. */
export class RangeInputError extends Error {}

const MOST = 200
const EVEN_STEPS = 8
const IN_A_STOP = 1

/**
 * The values a given runs through: those of a column, else even in its own figures (the n of 1:n), by stops, or the marks
 * there are. Throws RangeInputError.
 */
export function valuesOf(range: Range, given: Given, column?: readonly number[]): RangeValue[] {
  if (!['quantity', 'choice'].includes(given.entry ?? 'quantity')) throw new RangeInputError(words.rangeOnlyOfQuantity)
  const unit = unitOf(given)
  if (column && column.length > MOST) throw new RangeInputError(words.tooManyDifferent(column.length, MOST))
  const texts = column
    ? [...new Set(column.map((value) => formatInput({ ...given, value: '' }, rounded(figureIn(value, unit)), unit)))]
    : textsOf(range, given, unit)
  if (texts.length > MOST) throw new RangeInputError(words.tooManyValues(texts.length, MOST))
  const allowed = within(given, unit)
  // What the given's field does not take, such as a ratio below zero, lies in no range of it.
  const allowedValues = texts.flatMap((text) => {
    const value = quietly(text, unit)?.value
    return value !== undefined && allowed(value) ? [{ text, value }] : []
  })
  if (allowedValues.length === 0) throw new RangeInputError(words.emptyRange)
  return allowedValues
}

/** The unit its values are written in. */
function unitOf(given: Given): DisplayUnit {
  const declared = declaredUnit(given.unit)
  if (declared.error) throw new RangeInputError(declared.error.message)
  const unit = declared.unit ?? typedDisplayUnit(given.value)
  if (unit) return unit
  const reading = quietly(given.value)
  if (!reading) throw new RangeInputError(words.rangeOfUnknown)
  return reading.notation
    ? notationUnit(reading.dimension, reading.notation)
    : defaultUnit(reading.value, reading.dimension)
}

function quietly(text: string, unit?: DisplayUnit) {
  try {
    return readQuantity(text, unit)
  } catch (error) {
    if (error instanceof ReadError) return undefined
    throw error
  }
}

function end(text: string | undefined, which: 'begins' | 'ends', unit: DisplayUnit): number {
  if (text === undefined || text.trim() === '') throw new RangeInputError(words.endMissing(which))
  try {
    return readQuantity(text, unit).value
  } catch (error) {
    if (!(error instanceof ReadError)) throw error
    throw new RangeInputError(words.endUnreadable(which, error.message))
  }
}

function textsOf(range: Range, given: Given, unit: DisplayUnit): string[] {
  if (range.by === 'marks') return marksIn(range, given, unit)
  const [from, to] = [end(range.from ?? given.least, 'begins', unit), end(range.to ?? given.most, 'ends', unit)]
  const figures =
    range.by === 'stops' ? byStops(from, to, range.count ?? IN_A_STOP, unit) : evenly(from, to, range, unit)
  return figures.map((figured) => formatInput({ ...given, value: '' }, rounded(figured), unit))
}

/** Digits beyond these no one sets; the value is read back from what is written. */
const rounded = ({ figure, turned }: NumericOutcome): NumericOutcome => ({
  figure: Number(figure.toPrecision(6)),
  turned,
})

function evenly(from: number, to: number, { count = EVEN_STEPS }: Range, unit: DisplayUnit): NumericOutcome[] {
  const [first, last] = [figureIn(from, unit), figureIn(to, unit)]
  if (first.turned !== last.turned)
    return Array.from({ length: count + 1 }, (_, i) => figureIn(from + ((to - from) * i) / count, unit))
  return Array.from({ length: count + 1 }, (_, i) => ({
    figure: first.figure + ((last.figure - first.figure) * i) / count,
    turned: first.turned,
  }))
}

/** A stop is a factor of √2 of an f-number, one of a figure in stops, and a factor of 2 of anything else. */
function byStops(from: number, to: number, count: number, unit: DisplayUnit): NumericOutcome[] {
  const up = to >= from
  if (unit.dimension === STOP) {
    const steps = Math.floor(Math.abs(to - from) * count + 1e-9)
    return Array.from({ length: Math.min(steps, MOST) + 1 }, (_, i) => figureIn(from + (up ? i : -i) / count, unit))
  }
  if (!(from > 0) || !(to > 0)) throw new RangeInputError(words.stopsAboveZero)
  const perStop = unit.notation === 'f-number' ? 0.5 : 1
  const steps = Math.floor((Math.abs(Math.log2(to / from)) / perStop) * count + 1e-9)
  return Array.from({ length: Math.min(steps, MOST) + 1 }, (_, i) =>
    figureIn(from * 2 ** (((up ? i : -i) * perStop) / count), unit),
  )
}

/** The given's own options, else the marks of a lens or a shutter; from where to where, as far as that is said. */
function marksIn(range: Range, given: Given, unit: DisplayUnit): string[] {
  const texts = given.options?.length ? given.options : marksOf(unit)
  const bound = (text: string | undefined, which: 'begins' | 'ends'): number | undefined =>
    text === undefined || text.trim() === '' ? undefined : end(text, which, unit)
  const ends = [bound(range.from ?? given.least, 'begins'), bound(range.to ?? given.most, 'ends')]
  const [low = -Infinity, high = Infinity] =
    ends[0] !== undefined && ends[1] !== undefined && ends[0] > ends[1] ? [ends[1], ends[0]] : ends
  const [least, most] = [low - 1e-9 * Math.abs(low), high + 1e-9 * Math.abs(high)]
  return texts.filter((text) => {
    const value = quietly(text, unit)?.value
    return value !== undefined && !(value < least) && !(value > most)
  })
}

function marksOf(unit: DisplayUnit): string[] {
  if (unit.notation === 'f-number') return allMarks('aperture').map(({ text }) => text)
  if (unit.dimension === TIME) return allMarks('time').map(({ text }) => text)
  throw new RangeInputError(words.noMarks)
}

/** Whether the given takes a value. */
function within(given: Given, unit: DisplayUnit): (value: number) => boolean {
  const limit = (text: string | undefined): number | undefined =>
    text === undefined ? undefined : quietly(text, unit)?.value
  const [least, most] = [limit(given.least), limit(given.most)]
  return (value) =>
    (least === undefined || value >= least - 1e-9 * Math.abs(least)) &&
    (most === undefined || value <= most + 1e-9 * Math.abs(most))
}
