import { ComputeError } from '../values/operations.ts'
import type { Value } from '../values/types.ts'

/**
 * The values of one quantity over many tries. What does not compute in a try has no value there: NaN among numbers,
 * 2 among flags, undefined among other values.
 */
export type Column =
  | { readonly kind: 'same'; readonly value: Value }
  | { readonly kind: 'numbers'; readonly data: Float64Array }
  /** Yes or no: 1 or 0. */
  | { readonly kind: 'flags'; readonly data: Uint8Array }
  /** Records part by part, so that taking a part costs nothing. */
  | { readonly kind: 'record'; readonly parts: Readonly<Record<string, Column>> }
  | { readonly kind: 'values'; readonly data: readonly (Value | undefined)[] }
  /** In no try is there a value. */
  | { readonly kind: 'none' }

/** A formula over columns: the columns of its arguments, in the order of its slots, and how many tries there are. */
export type ColumnProgram = (args: readonly Column[], tries: number) => Column

export const NONE: Column = { kind: 'none' }
/** A flag of a try in which there is none. */
export const NO_FLAG = 2

/** A column of numbers, in coherent SI. */
export const numbers = (data: Float64Array): Column => ({ kind: 'numbers', data })
/** A column of one value that is the same in all rows. */
export const same = (value: Value): Column => ({ kind: 'same', value })

/** The value in one try. */
export function valueAt(column: Column, i: number): Value | undefined {
  switch (column.kind) {
    case 'same':
      return column.value
    case 'numbers': {
      const value = column.data[i] as number
      return Number.isNaN(value) ? undefined : value
    }
    case 'flags': {
      const flag = column.data[i]
      return flag === NO_FLAG ? undefined : flag === 1
    }
    case 'record': {
      const whole: Record<string, Value> = {}
      for (const [name, part] of Object.entries(column.parts)) {
        const value = valueAt(part, i)
        if (value === undefined) return undefined
        whole[name] = value
      }
      return whole
    }
    case 'values':
      return column.data[i]
    default:
      return undefined
  }
}

/** What a computation gives, or undefined where it has no value. */
export const attempt = (compute: () => Value): Value | undefined => {
  try {
    return compute()
  } catch (error) {
    if (error instanceof ComputeError) return undefined
    throw error
  }
}

/** Values computed try by try, in the tightest kind of column that holds them. */
export function gathered(tries: number, compute: (i: number) => Value | undefined): Column {
  const data: (Value | undefined)[] = []
  for (let i = 0; i < tries; i++) data.push(compute(i))
  return columnOf(data)
}

/** A column of these values: of plain numbers where all of them are, as that is computed fastest. */
export function columnOf(data: readonly (Value | undefined)[]): Column {
  const first = data.find((value) => value !== undefined)
  if (first === undefined) return NONE
  if (typeof first === 'number') return numbers(Float64Array.from(data, (value) => (value as number) ?? Number.NaN))
  if (typeof first === 'boolean')
    return { kind: 'flags', data: Uint8Array.from(data, (value) => (value === undefined ? NO_FLAG : value ? 1 : 0)) }
  return { kind: 'values', data }
}

/** Computes try by try where any argument varies, once where none does. */
export function byTry(args: readonly Column[], n: number, compute: (...values: Value[]) => Value): Column {
  if (args.every(({ kind }) => kind === 'same')) {
    const values = args.map((arg) => (arg as { readonly value: Value }).value)
    const value = attempt(() => compute(...values))
    return value === undefined ? NONE : same(value)
  }
  return gathered(n, (i) => {
    const values: Value[] = []
    for (const arg of args) {
      const value = valueAt(arg, i)
      if (value === undefined) return undefined
      values.push(value)
    }
    return attempt(() => compute(...values))
  })
}
