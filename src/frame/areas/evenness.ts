import type { LitPicture } from '../colour/light.ts'
import { FrameError } from '../problem.ts'
import type { EvennessArea } from './area.ts'
import { clippedShare, FEW, firstPixel, type Pixels, pixelsOf } from './pixels.ts'
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
      const { Y, full, empty } = fieldOf(picture, pixels)
      const which = words.field(column + 1, row + 1, where)
      if (full > FEW) throw new FrameError(words.fieldClipped(which, clippedShare(full)))
      black = Math.max(black, empty)
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

/** The mean luminance of a field, and how many of its pixels are clipped. */
function fieldOf(
  { samples, width, channels, most, luminance }: LitPicture,
  { left, top, right, bottom }: Pixels,
): { Y: number; full: number; empty: number } {
  const [reds, greens, blues] = luminance as readonly [Float64Array, Float64Array, Float64Array]
  let [sum, full, empty] = [0, 0, 0]
  for (let y = top; y < bottom; y++) {
    const [from, end] = [(y * width + left) * channels, (y * width + right) * channels]
    if (channels === 1)
      for (let at = from; at < end; at++) {
        const code = samples[at] as number
        if (code === most) full++
        if (code === 0) empty++
        sum += reds[code] as number
      }
    else
      for (let at = from; at < end; at += 3) {
        const red = samples[at] as number
        const green = samples[at + 1] as number
        const blue = samples[at + 2] as number
        if (red === most || green === most || blue === most) full++
        if ((red | green | blue) === 0) empty++
        sum += (reds[red] as number) + (greens[green] as number) + (blues[blue] as number)
      }
  }
  const count = (right - left) * (bottom - top)
  return { Y: sum / count, full: full / count, empty: empty / count }
}

/** The middle field, or the mean of the middle two or four. */
function centreOf(fields: readonly (readonly number[])[]): number {
  const middle = <T>(list: readonly T[]): readonly T[] => list.slice((list.length - 1) >> 1, (list.length >> 1) + 1)
  const values = middle(fields).flatMap((row) => middle(row))
  return values.reduce((sum, Y) => sum + Y, 0) / values.length
}
