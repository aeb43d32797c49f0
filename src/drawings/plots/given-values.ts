import type { Value } from '../../language/index.ts'

/** The numbers of an input that is a number or a list of numbers; otherwise undefined. */
export function numbersIn(value: Value | undefined): readonly number[] | undefined {
  if (typeof value === 'number') return [value]
  if (!Array.isArray(value)) return undefined
  return value.every((one) => typeof one === 'number') ? (value as readonly number[]) : undefined
}

/** The texts of an input that is a text or a list of texts; otherwise undefined. */
export function textsIn(value: Value | undefined): readonly string[] | undefined {
  if (typeof value === 'string') return [value]
  if (!Array.isArray(value)) return undefined
  return value.every((one) => typeof one === 'string') ? (value as readonly string[]) : undefined
}

/** A finite number, or undefined. */
export const numberIn = (value: Value | undefined): number | undefined =>
  typeof value === 'number' && Number.isFinite(value) ? value : undefined
