import type { Value } from '../../language/index.ts'

/** Reads numbers fed to a drawing; what is no use is said in `cannot`. */
export interface NumberReader {
  /** A number above zero and no more than `most`; undefined where none is given, or none that can be used. */
  positive(value: Value | undefined, what: string, most?: number): number | undefined
}

/** Beyond this a figure is a slip of the hand, in whatever unit. */
const MOST = 1e6

export function numberReader(omissions: string[], show: (value: number) => string = String): NumberReader {
  return {
    positive(value, what, most = MOST) {
      if (value === undefined) return undefined
      if (typeof value !== 'number' || Number.isNaN(value))
        omissions.push(`${what} is left out: what is given is no number.`)
      else if (value <= 0) omissions.push(`${what} is left out: it is not above zero.`)
      else if (value > most) omissions.push(`${what} is left out: it is more than ${show(most)}.`)
      else return value
      return undefined
    },
  }
}

/** The numbers of a list; undefined where it holds anything else. */
export const numbersOf = (value: Value | undefined): readonly number[] | undefined =>
  Array.isArray(value) && value.length > 0 && value.every((one) => typeof one === 'number' && Number.isFinite(one))
    ? (value as readonly number[])
    : undefined
