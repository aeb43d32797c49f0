import type { LitPicture } from '../colour/light.ts'
import { FrameError } from '../problem.ts'
import type { EvennessArea } from './area.ts'
import { clippedShare, clippingIn, FEW, firstPixel, pixelsOf } from './pixels.ts'
import * as words from './words.ts'

export interface EvennessReading {
  /** Rows of relative luminance, the greatest 1. */
  readonly light: readonly (readonly number[])[]
  /** Stops between the greatest and the least field. */
  readonly spread: number
  /** The least over the mean of the fields. */
  readonly uniformity: number
  /** Top left, top right, bottom right, bottom left against the centre, stops; negative is darker. */
  readonly corner: readonly [number, number, number, number]
  readonly warnings: readonly string[]
}

/** Mean luminance of a grid of fields. A clipped or entirely black field has no figure that means anything: FrameError. */
export function measureEvenness(area: EvennessArea, picture: LitPicture): EvennessReading {
  const { name, columns, rows } = area
  const box = area.box ?? ([0, 0, picture.width, picture.height] as const)
  const where = `“${name}”`
  pixelsOf(box, picture, where)
  const borders = (from: number, size: number, count: number): number[] =>
    Array.from({ length: count + 1 }, (_, i) => firstPixel(from + (size * i) / count))
  const [xs, ys] = [borders(box[0], box[2], columns), borders(box[1], box[3], rows)]
  if ([xs, ys].some((edges) => edges.some((edge, i) => i > 0 && edge <= (edges[i - 1] as number))))
    throw new FrameError(words.tooFewPixels(where, columns, rows))
  let black = 0
  const fields = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => {
      const pixels = {
        left: xs[column] as number,
        right: xs[column + 1] as number,
        top: ys[row] as number,
        bottom: ys[row + 1] as number,
      }
      const { full, empty } = clippingIn(picture, pixels)
      const which = words.field(column + 1, row + 1, where)
      if (full > FEW) throw new FrameError(words.fieldClipped(which, clippedShare(full)))
      black = Math.max(black, empty)
      const Y = meanLuminance(picture, pixels)
      if (!(Y > 0)) throw new FrameError(words.fieldBlack(which))
      return Y
    }),
  )
  const all = fields.flat()
  const [greatest, least] = [Math.max(...all), Math.min(...all)]
  const mean = all.reduce((sum, Y) => sum + Y, 0) / all.length
  const centre = centreOf(fields)
  const at = (row: number, column: number): number => Math.log2((fields.at(row)?.at(column) as number) / centre)
  return {
    light: fields.map((row) => row.map((Y) => Y / greatest)),
    spread: Math.log2(greatest / least),
    uniformity: least / mean,
    corner: [at(0, 0), at(0, -1), at(-1, -1), at(-1, 0)],
    warnings: black > FEW ? [words.partlyBlack(clippedShare(black))] : [],
  }
}

function meanLuminance(
  { samples, width, channels, luminance }: LitPicture,
  pixels: { left: number; top: number; right: number; bottom: number },
): number {
  const { left, top, right, bottom } = pixels
  let sum = 0
  for (let y = top; y < bottom; y++) {
    let at = (y * width + left) * channels
    for (let x = left; x < right; x++)
      for (let c = 0; c < channels; c++) sum += (luminance[c] as Float64Array)[samples[at++] as number] as number
  }
  return sum / ((right - left) * (bottom - top))
}

/** The middle field, or the mean of the middle two or four. */
function centreOf(fields: readonly (readonly number[])[]): number {
  const middle = <T>(list: readonly T[]): readonly T[] => list.slice((list.length - 1) >> 1, (list.length >> 1) + 1)
  const values = middle(fields).flatMap((row) => middle(row))
  return values.reduce((sum, Y) => sum + Y, 0) / values.length
}
