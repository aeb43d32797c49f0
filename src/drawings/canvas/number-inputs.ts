import type { Value } from '../../language/index.ts'
import { CANVAS_WORDS as WORDS } from './words.ts'

/** Reads the numeric inputs of a drawing and reports unusable values as omissions. */
export interface NumberReader {
  /** A number above zero and at most `most`; undefined if the input is missing or unusable. */
  positive(value: Value | undefined, what: string, most?: number): number | undefined
}

/** Larger values are typing errors in any unit. */
const MOST = 1e6

/**
 * A reader of the figures a drawing is given. What it leaves out is added to `omissions`, in words, with `show` for
 * figures.
 */
export function numberReader(omissions: string[], show: (value: number) => string = String): NumberReader {
  return {
    positive(value, what, most = MOST) {
      if (value === undefined) return undefined
      if (typeof value !== 'number' || Number.isNaN(value)) omissions.push(WORDS.notANumber(what))
      else if (value <= 0) omissions.push(WORDS.notAboveZero(what))
      else if (value > most) omissions.push(WORDS.tooLarge(what, show(most)))
      else return value
      return undefined
    },
  }
}

/** The numbers of a list; undefined if it is empty or contains anything else. */
export const numbersOf = (value: Value | undefined): readonly number[] | undefined =>
  Array.isArray(value) && value.length > 0 && value.every((one) => typeof one === 'number' && Number.isFinite(one))
    ? (value as readonly number[])
    : undefined
