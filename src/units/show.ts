import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'
import { type DisplayUnit, defaultUnit, type Notation } from './display.ts'
import { decimalsOf, showFigure, typedDecimals, typedFigure } from './figure.ts'
import { nearestMark } from './marks.ts'
import { showStops } from './stops.ts'

export interface Shown {
  /** The figure alone, to be set right-aligned on its unit: `857`, `f/5.66`, `1:13.2`. */
  readonly figure: string
  /** The unit alone, empty where the notation includes it. */
  readonly unit: string
  /** Both together, as one would write it. */
  readonly text: string
  /** The nearest third-stop mark, where the quantity is set on a marked scale. */
  readonly mark?: string
}

/** A figure as it is set on the equipment: its mark, where it has one, with the exact figure beside it. */
export interface Setting extends Shown {
  /** The text of the exact figure, where the mark in its place is another. */
  readonly exactly?: string
}

/** Shows a figure as it is set: a mark of the scale first, the exact figure second. */
export function asSet(shown: Shown): Setting {
  const { text, mark } = shown
  if (mark === undefined || mark === text) return shown
  const [figure, unit = ''] = mark.split(/ (?=s$)/) as [string, string?]
  return { figure, unit, text: mark, exactly: text }
}

const join = (figure: string, unit: string): string =>
  unit === '' ? figure : /^[°′″]$/.test(unit) ? `${figure}${unit}` : `${figure} ${unit}`

export interface ShowOptions {
  readonly unit?: DisplayUnit | undefined
  readonly tolerance?: number | undefined
  /** It was typed: no digit is dropped. */
  readonly typed?: boolean | undefined
}

/** Shows a quantity given in coherent SI, in the declared unit or the one its size suggests. */
export function showQuantity(
  value: number,
  dimension: Dimension,
  { unit: declared, tolerance, typed = false }: ShowOptions = {},
): Shown {
  const unit = declared ?? defaultUnit(value, dimension)
  const figureOf = typed ? typedFigure : (figure: number): string => showFigure(figure)
  if (unit.notation) {
    const { mark, ...shown } = SHOW_NOTATION[unit.notation](value, figureOf)
    // Beside what was typed the nearest mark would be another figure.
    const marked = mark === undefined || (typed && mark !== shown.text) ? shown : { ...shown, mark }
    return withPercent(marked, value, tolerance, figureOf)
  }
  const figure = (value - unit.offset) / unit.factor
  const limits = tolerance === undefined || tolerance === 0 ? undefined : tolerance / unit.factor
  if (dimension === D.STOP && !typed) {
    const stops = showStops(figure, limits)
    return { figure: stops, unit: unit.symbol, text: join(stops, unit.symbol) }
  }
  const fixed =
    limits && Math.max(decimalsOf(limits), ...(typed ? [figure, limits].map((one) => typedDecimals(one)) : []))
  const shown = fixed === undefined ? figureOf(figure) : showFigure(figure, fixed)
  const withLimits = limits === undefined ? shown : `${shown} ± ${showFigure(limits, fixed)}`
  return { figure: withLimits, unit: unit.symbol, text: join(withLimits, unit.symbol) }
}

const withMark = (figure: string, unit: string, mark: string | undefined): Shown => ({
  figure,
  unit,
  text: join(figure, unit),
  ...(mark === undefined ? {} : { mark }),
})

type FigureOf = (value: number) => string

/** A number in a notation of its own has its limits in per cent: `1:4 ± 1 %`. */
function withPercent(shown: Shown, value: number, tolerance: number | undefined, figureOf: FigureOf): Shown {
  if (tolerance === undefined || tolerance === 0 || value === 0) return shown
  const text = `${shown.text} ± ${figureOf((100 * tolerance) / Math.abs(value))} %`
  return { ...shown, figure: text, unit: '', text }
}

function showFNumber(value: number, figureOf: FigureOf): Shown {
  return withMark(`f/${figureOf(value)}`, '', nearestMark('aperture', value)?.text)
}

function showRatio(value: number, figureOf: FigureOf): Shown {
  if (!(value > 0) || !Number.isFinite(value)) return withMark(figureOf(value), '', undefined)
  return withMark(value > 1 ? `${figureOf(value)}:1` : `1:${figureOf(1 / value)}`, '', undefined)
}

function showShutter(value: number, figureOf: FigureOf): Shown {
  // Marked times turn into fractions below half a second.
  const isShort = figureOf !== typedFigure || typedDecimals(1 / value) <= typedDecimals(value)
  const fraction = value > 0 && value < 0.45 && isShort
  return withMark(fraction ? `1/${figureOf(1 / value)}` : figureOf(value), 's', nearestMark('time', value)?.text)
}

const SHOW_NOTATION: Readonly<Record<Notation, (value: number, figureOf: FigureOf) => Shown>> = {
  'f-number': showFNumber,
  ratio: showRatio,
  shutter: showShutter,
}
