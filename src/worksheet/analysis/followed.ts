import type { Value } from '../../language/index.ts'
import { type DisplayUnit, defaultUnit, NONE } from '../../units/index.ts'
import type { Given } from '../schema/document.ts'
import type { RangeValue } from './range-values.ts'

/** What has a name and may have a label: a cell, or a column of a table. */
export interface Labelled {
  readonly name: string
  readonly label?: string | undefined
}

/** One result over the range, or one column over another, in its own unit. */
export interface Followed {
  readonly cell: Labelled
  /** The unit of its figures; a list or a text has none. */
  readonly unit: DisplayUnit | undefined
  /** As shown at each value; a dash where it does not compute. */
  readonly shown: readonly string[]
  /** The figures in that unit, for a plot; undefined where there is none to plot. */
  readonly figures: readonly (number | undefined)[]
  /** As it is now. */
  readonly present: number | undefined
  /** It was measured, so it does not follow. */
  readonly measured: boolean
}

/** A given run through a range and the results at each of its values, or columns of a table over another of them. */
export interface RangeTable {
  /** What runs along the plot. */
  readonly varied: Labelled
  /** Undefined of dates and times. */
  readonly unit: DisplayUnit | undefined
  /** The values of a given, as typed into it; none of a column, whose rows are in its table. */
  readonly values: readonly RangeValue[]
  /** The values as shown, and as figures in the unit; of dates and times in seconds. */
  readonly shown: readonly string[]
  readonly figures: readonly number[]
  /** The given's figure as it is now. */
  readonly present: number | undefined
  /** The place in the range that is the present value. */
  readonly presentAt: number | undefined
  readonly followed: readonly Followed[]
  /** Steps by factors: shown on a scale of equal factors. */
  readonly byFactors: boolean
  /** The given may have any value between those of the range. */
  readonly isContinuous: boolean
  /** A line from value to value says something: they are in order. */
  readonly isJoined: boolean
  /** The figures are moments: days and times, or times of day. */
  readonly moments?: 'days' | 'times of day'
  /** The figures of the results at any figure of the given; of a column, which has none between its rows, undefined. */
  readonly at: (figure: number) => readonly (number | undefined)[]
  /** The given filled in with another value, as typed; undefined of a column. */
  readonly filledWith: ((text: string) => Given) | undefined
}

/** Where there is no figure to show. */
export const NOTHING = '–'

/** The figure one reads: the n of 1:n, the f-number, millimetres. */
export const inUnit = (value: number, unit: DisplayUnit): number =>
  unit.notation === 'ratio' ? 1 / value : (value - unit.offset) / unit.factor

/** The value in coherent SI behind a figure one reads. */
export const fromUnit = (figure: number, unit: DisplayUnit): number =>
  unit.notation === 'ratio' ? 1 / figure : figure * unit.factor + unit.offset

/** The figure of a value in a unit; undefined where there is none to plot. */
export const figureOf = (value: Value | undefined, unit: DisplayUnit | undefined): number | undefined =>
  typeof value === 'number' && unit ? inUnit(value, unit) : undefined

/** A plain number in a notation of the trade. */
export const showIn = (notation: DisplayUnit['notation']): DisplayUnit =>
  ({ ...defaultUnit(1, NONE), notation }) as DisplayUnit

/** A unit that suits most of some values in coherent SI. */
export function suitingUnit(numbers: readonly number[], dimension: DisplayUnit['dimension']): DisplayUnit {
  const sizes = numbers.map(Math.abs).sort((a, b) => a - b)
  return defaultUnit(sizes[Math.floor(sizes.length / 2)] ?? 1, dimension)
}
