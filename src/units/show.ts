import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'
import { type DisplayUnit, defaultUnit, type Notation } from './display.ts'
import { decimalsOf, showFigure } from './figure.ts'
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

const join = (figure: string, unit: string): string =>
  unit === '' ? figure : /^[°′″]$/.test(unit) ? `${figure}${unit}` : `${figure} ${unit}`

/** Shows a quantity given in coherent SI, in the declared unit or the one its size suggests. */
export function showQuantity(
  value: number,
  dimension: Dimension,
  options: { unit?: DisplayUnit | undefined; tolerance?: number | undefined } = {},
): Shown {
  const unit = options.unit ?? defaultUnit(value, dimension)
  if (unit.notation) return withPercent(SHOW_NOTATION[unit.notation](value), value, options.tolerance)
  const figure = (value - unit.offset) / unit.factor
  const limits =
    options.tolerance === undefined || options.tolerance === 0 ? undefined : options.tolerance / unit.factor
  if (dimension === D.STOP) {
    const stops = showStops(figure, limits)
    return { figure: stops, unit: unit.symbol, text: join(stops, unit.symbol) }
  }
  const fixed = limits === undefined ? undefined : decimalsOf(limits)
  const shown = showFigure(figure, fixed)
  const withLimits = limits === undefined ? shown : `${shown} ± ${showFigure(limits, fixed)}`
  return { figure: withLimits, unit: unit.symbol, text: join(withLimits, unit.symbol) }
}

const withMark = (figure: string, unit: string, mark: string | undefined): Shown => ({
  figure,
  unit,
  text: join(figure, unit),
  ...(mark === undefined ? {} : { mark }),
})

/** A number in a notation of its own has its limits in per cent: `1:4 ± 1 %`. */
function withPercent(shown: Shown, value: number, tolerance: number | undefined): Shown {
  if (tolerance === undefined || tolerance === 0 || value === 0) return shown
  const text = `${shown.text} ± ${showFigure((100 * tolerance) / Math.abs(value))} %`
  return { ...shown, figure: text, unit: '', text }
}

function showFNumber(value: number): Shown {
  return withMark(`f/${showFigure(value)}`, '', nearestMark('aperture', value)?.text)
}

function showRatio(value: number): Shown {
  if (!(value > 0) || !Number.isFinite(value)) return withMark(showFigure(value), '', undefined)
  return withMark(value > 1 ? `${showFigure(value)}:1` : `1:${showFigure(1 / value)}`, '', undefined)
}

function showShutter(value: number): Shown {
  // Marked times turn into fractions below half a second.
  const fraction = value > 0 && value < 0.45
  return withMark(fraction ? `1/${showFigure(1 / value)}` : showFigure(value), 's', nearestMark('time', value)?.text)
}

const SHOW_NOTATION: Readonly<Record<Notation, (value: number) => Shown>> = {
  'f-number': showFNumber,
  ratio: showRatio,
  shutter: showShutter,
}
