import { type DisplayUnit, showQuantity } from '../../units/index.ts'
import type { Given } from '../schema/document.ts'

/** A figure as the unit writes it: millimetres of a length, the n of 1:n, the f-number. */
export interface NumericOutcome {
  readonly figure: number
  /** Whether the figure falls as the value rises. */
  readonly turned: boolean
}

export function figureIn(value: number, unit: DisplayUnit): NumericOutcome {
  if (unit.notation === 'ratio' && value > 0 && value <= 1) return { figure: 1 / value, turned: true }
  return { figure: (value - unit.offset) / unit.factor, turned: false }
}

export const quantityOf = ({ figure, turned }: NumericOutcome, unit: DisplayUnit): number =>
  turned ? 1 / figure : figure * unit.factor + unit.offset

function figureText({ figure, turned }: NumericOutcome, unit: DisplayUnit): string {
  const digits = String(Number(figure.toPrecision(12)))
  if (unit.notation === 'f-number') return `f/${digits}`
  if (unit.notation === 'ratio') return turned ? `1:${digits}` : `${digits}:1`
  return digits
}

/** The text of a given's field for a new value: with or without a unit as it is typed now, and with the same limits. */
export function formatInput(given: Given, figured: NumericOutcome, unit: DisplayUnit): string {
  const digits = figureText(figured, unit)
  const limits = /\s*(±|\+\/?-).*$/.exec(given.value)?.[0] ?? ''
  const nominal = given.value.slice(0, given.value.length - limits.length)
  const bare = given.unit !== undefined && given.unit.trim() !== '' && !/[a-zµ°′″%‰]/i.test(nominal)
  return `${digits}${bare || unit.symbol === '' || unit.notation ? '' : ` ${unit.symbol}`}${limits}`
}

/** The same as one would say it. */
export function describeInput(figured: NumericOutcome, unit: DisplayUnit): string {
  if (unit.notation) return figureText(figured, unit)
  return showQuantity(quantityOf(figured, unit), unit.dimension, { unit }).text
}

const FINEST = 5

/**
 * Figures near a threshold, the roundest first, on the side where the condition passes (1 above, −1 below, 0
 * either). Rounding may go so far as the change itself does, and by 2 % of the figure; half a per cent always.
 */
export function rounder(figure: number, side: -1 | 0 | 1, change: number, whole: boolean): number[] {
  if (figure === 0) return [0]
  const size = Math.abs(figure)
  const room = Math.max(0.005 * size, Math.min(0.02 * size, change))
  const top = Math.floor(Math.log10(size))
  const found: number[] = []
  for (let power = top; power >= top - FINEST; power--) {
    const steps = figure / 10 ** power
    const step = side > 0 ? Math.ceil(steps - 1e-9) : side < 0 ? Math.floor(steps + 1e-9) : Math.round(steps)
    const rounded = Number((step * 10 ** power).toPrecision(12))
    if ((Math.abs(rounded - figure) <= room || (whole && power === 0)) && !found.includes(rounded)) found.push(rounded)
  }
  return found
}
