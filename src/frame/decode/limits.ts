import { FrameError } from '../problem.ts'
import * as words from './words.ts'

/** The decoded samples are never more than this, in bytes. */
const MOST_BYTES = 2 ** 31 - 2 ** 20

/**
 * Refuses a picture that cannot be in its file, before anything is reserved for it.
 * `needed` is the size in bytes or bits that the coded data must give, `most` the greatest that they can.
 */
export function checkSize(
  format: string,
  width: number,
  height: number,
  bytesPerPixel: number,
  most: number,
  needed: number,
): void {
  if (!(width >= 1 && height >= 1)) throw new FrameError(words.impossibleSize(format, width, height))
  if (width * height * bytesPerPixel > MOST_BYTES) throw new FrameError(words.tooManyPixels(width, height))
  if (needed > most) throw new FrameError(words.tooFewData(format, width, height))
}

/** The error for a file that ends too early: what ended, in the words of its format. */
export const cutShort = (format: string, what = words.dataEnd): FrameError =>
  new FrameError(words.cutShort(format, what))

/** The error for a file that contradicts its format: what is wrong in it. */
export const damaged = (format: string, what: string): FrameError => new FrameError(words.damaged(format, what))
