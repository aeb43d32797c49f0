import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'
import { type DisplayUnit, defaultUnit, type Notation } from './display.ts'
import { nearestMark } from './marks.ts'

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

const THIN = '\u202f'
const SIGNIFICANT = 3

/** How many decimals show a figure to three significant digits, whole digits are never dropped. */
function decimalsFor(size: number): number {
  if (size === 0) return 0
  // 9.996 has the digits of 10.0, to which it rounds.
  const rounded = Number(size.toPrecision(SIGNIFICANT))
  return Math.max(0, SIGNIFICANT - 1 - Math.floor(Math.log10(rounded)))
}

/** Groups the whole digits by threes from five digits on. */
function grouped(digits: string): string {
  const [whole, fraction] = digits.split('.') as [string, string?]
  const spaced = whole.length >= 5 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole
  return fraction === undefined ? spaced : `${spaced}.${fraction}`
}

function written(size: number, fixed: number | undefined, usual: number | undefined): string {
  const exact = Number(size.toPrecision(12))
  const power = exact.toExponential(SIGNIFICANT - 1)
  if (exact !== 0 && (exact >= 1e9 - 0.5 || Number(power) < 1e-4)) {
    return (Number(power) === exact ? exact.toExponential() : power).replace('e+', 'e')
  }
  if (fixed !== undefined) return grouped(exact.toFixed(fixed))
  const rounded = exact.toFixed(usual ?? decimalsFor(exact))
  return grouped(Number(rounded) === exact && rounded.includes('.') ? rounded.replace(/\.?0+$/, '') : rounded)
}

/**
 * A figure with sensible digits: three significant (or the `usual` number of decimals), whole digits never dropped, an
 * exact value without needless zeros. `fixed` decimals, as a tolerance leaves them, keep their zeros.
 */
export function showFigure(value: number, fixed?: number, usual?: number): string {
  if (Number.isNaN(value)) return 'not a number'
  if (!Number.isFinite(value)) return value > 0 ? '∞' : '−∞'
  const size = Math.abs(value)
  const digits = written(size, fixed, usual)
  return value < 0 && /[1-9]/.test(digits) ? `−${digits}` : digits
}

/** The decimals a tolerance leaves meaningful: its own first digit, its second too where that digit is 1. */
function decimalsOf(tolerance: number): number {
  const exponent = Math.floor(Math.log10(tolerance))
  const leading = tolerance / 10 ** exponent
  return Math.min(12, Math.max(0, -exponent + (leading < 1.95 && Math.abs(leading - 1) > 1e-6 ? 1 : 0)))
}

/** Meters read tenths of a stop, and careful work compares hundredths; a finer figure would be no better founded. */
export const STOP_DECIMALS = 2

/** A number of stops to a hundredth. Limits below half a hundredth are not shown. */
function showStops(stops: number, limits: number | undefined): string {
  const rounded = Math.abs(stops) < 0.5 * 10 ** -STOP_DECIMALS ? 0 : stops
  if (limits === undefined || limits < 0.5 * 10 ** -STOP_DECIMALS)
    return stops === 0 || rounded !== 0 ? showFigure(rounded, undefined, STOP_DECIMALS) : (0).toFixed(STOP_DECIMALS)
  const decimals = Math.min(STOP_DECIMALS, decimalsOf(limits))
  return `${showFigure(rounded, decimals)} ± ${showFigure(limits, decimals)}`
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
