import { VALUE_WORDS as W } from './words.ts'

/** A computation refused where it happens, so that no infinity slips through a later division. */
export class ComputeError extends Error {
  /** Which operation of the program refused, in the order they finish; the formula knows its span. */
  operation: number | undefined
}

/** A part of a record whose figures are still to come: a formula waits for it, as for a given that is not filled in. */
export class NotYet extends ComputeError {}

/**
 * What a formula finds in the place of a value that is not there: whatever reads it waits. A branch that is not taken does
 * not read it.
 */
export const MISSING = new Proxy<Record<string, never>>(
  {},
  {
    get() {
      throw new NotYet('')
    },
  },
)

const refuse = (message: string): never => {
  throw new ComputeError(message)
}

/** A quotient. Throws ComputeError where the divisor is zero or infinite. */
export function divide(a: number, b: number): number {
  const quotient = a / b
  if (b === 0) return refuse(W.divisionByZero)
  // Dividing by an overflow would give a harmless-looking zero.
  if (b === Number.POSITIVE_INFINITY || b === Number.NEGATIVE_INFINITY) return refuse(W.divisionByInfinity)
  return quotient
}

/** A power. Throws ComputeError where it is no real number, zero to a negative power, or too large. */
export function power(a: number, b: number): number {
  const raised = b === 2 ? a * a : a ** b
  if (Number.isFinite(raised)) return raised
  if (a === 0) return refuse(W.zeroToNegativePower)
  if (a < 0 && !Number.isInteger(b)) return refuse(W.noSuchRoot)
  return refuse(W.powerTooLarge)
}

/** A sum or product that is finite, or infinite because a function's result was; else refused, so that `min` does not hide it. */
function checked(value: number, a: number, b: number): number {
  if (value - value === 0) return value
  if (Number.isNaN(value)) return refuse(W.noFigure)
  return Number.isFinite(a) && Number.isFinite(b) ? refuse(W.tooLarge) : value
}

/** Two figures that differ by rounding alone count as equal: 0.1 + 0.2 = 0.3. */
const SAME = 1e-12

/** An infinite one, such as a depth to infinity, is the same as no finite one. */
const same = (a: number, b: number): boolean =>
  a === b ||
  (Math.abs(a - b) < Number.POSITIVE_INFINITY && Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b)))

/** Whether two values are the same, numbers to within rounding. */
export const equal = (a: unknown, b: unknown): boolean =>
  typeof a === 'number' && typeof b === 'number' ? same(a, b) : a === b
/** Whether two values differ by more than rounding. */
export const unequal = (a: unknown, b: unknown): boolean => !equal(a, b)
/** Whether a number is below another by more than rounding. */
export const less = (a: number, b: number): boolean => a < b && !same(a, b)
/** Whether a number is no greater than another, to within rounding. */
export const atMost = (a: number, b: number): boolean => a <= b || same(a, b)
/** Whether a number is above another by more than rounding. */
export const greater = (a: number, b: number): boolean => a > b && !same(a, b)
/** Whether a number is no less than another, to within rounding. */
export const atLeast = (a: number, b: number): boolean => a >= b || same(a, b)
/** A sum. Throws ComputeError where it is too large. */
export const add = (a: number, b: number): number => checked(a + b, a, b)
/** A difference. Throws ComputeError where it is too large. */
export const subtract = (a: number, b: number): number => checked(a - b, a, b)
/** A product. Throws ComputeError where it is too large. */
export const multiply = (a: number, b: number): number => checked(a * b, a, b)
/** A number with its sign changed. */
export const negative = (a: number): number => -a
/** No for yes, and yes for no. */
export const not = (a: boolean): boolean => !a
