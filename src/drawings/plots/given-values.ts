import type { Value } from '../../language/index.ts'

/** The numbers of an input that is a list of them, or one alone; undefined where it is neither. */
export function numbersIn(value: Value | undefined): readonly number[] | undefined {
  if (typeof value === 'number') return [value]
  if (!Array.isArray(value)) return undefined
  return value.every((one) => typeof one === 'number') ? (value as readonly number[]) : undefined
}

/** The texts of an input that is a list of them, or one alone; undefined where it is neither. */
export function textsIn(value: Value | undefined): readonly string[] | undefined {
  if (typeof value === 'string') return [value]
  if (!Array.isArray(value)) return undefined
  return value.every((one) => typeof one === 'string') ? (value as readonly string[]) : undefined
}

/** A finite number, or undefined. */
export const numberIn = (value: Value | undefined): number | undefined =>
  typeof value === 'number' && Number.isFinite(value) ? value : undefined
