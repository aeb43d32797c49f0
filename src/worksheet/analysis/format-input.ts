import type { DisplayUnit } from '../../units/index.ts'
import type { Given } from '../schema/document.ts'

/** A figure as the unit writes it: millimetres of a length, the n of 1:n, the f-number. */
export interface NumericOutcome {
  readonly figure: number
  /** Whether the figure falls as the value rises. */
  readonly turned: boolean
}

/** A value, given in coherent SI, as a figure in a unit. */
export function figureIn(value: number, unit: DisplayUnit): NumericOutcome {
  if (unit.notation === 'ratio' && value > 0 && value <= 1) return { figure: 1 / value, turned: true }
  return { figure: (value - unit.offset) / unit.factor, turned: false }
}

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
