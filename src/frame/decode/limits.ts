import { FrameError } from '../problem.ts'

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
  if (!(width >= 1 && height >= 1))
    throw new FrameError(`the ${format} says it is ${width} × ${height} pixels; export it again`)
  if (width * height * bytesPerPixel > MOST_BYTES)
    throw new FrameError(
      `the picture is ${width} × ${height} pixels, more than can be measured at once; export a part of it`,
    )
  if (needed > most)
    throw new FrameError(
      `the ${format} says it is ${width} × ${height} pixels, but its data are far too few for that; it is cut short or damaged: copy or export it again`,
    )
}

export const cutShort = (format: string, what = 'its data end'): FrameError =>
  new FrameError(`the ${format} is cut short: ${what} before the picture is complete; copy or export it again`)

export const damaged = (format: string, what: string): FrameError =>
  new FrameError(`the ${format} is damaged: ${what}; copy or export it again`)
