import type { LitPicture } from '../colour/light.ts'
import { FrameError } from '../problem.ts'
import type { LineArea, Point } from './area.ts'
import { follow, stationsOf } from './follow.ts'
import { checkInside } from './pixels.ts'
import { lineAngle } from './rule.ts'
import * as words from './words.ts'

export interface LineReading {
  /** Degrees from the x axis, clockwise positive, in (−90, 90]. */
  readonly angle: number
  /** How far the line bows from the straight between its ends, px. */
  readonly bow: number
  /** The same in per cent of the picture’s height. */
  readonly bow_percent: number
  readonly warnings: readonly string[]
}

const LEAST_STATIONS = 12
const SHORTEST = 30

/**
 * Follows a straight edge or a ruled line along two marks and fits a cubic to where it is found.
 * The bow is the greatest distance of the curve from the straight between its ends. Throws FrameError where there is no line.
 */
export function measureLine({ name, from, to }: LineArea, picture: LitPicture): LineReading {
  const where = `“${name}”`
  checkInside(from, picture, words.markOf('"from"', where))
  checkInside(to, picture, words.markOf('"to"', where))
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (length < SHORTEST) throw new FrameError(words.marksApart(where, length.toFixed(1), SHORTEST))
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const found = follow(picture, from, along, length)
  const { curve, scatter } = cubic(found, length)
  if (found.length < LEAST_STATIONS || !(scatter < 1.5)) throw new FrameError(words.noLine(where))
  const place = (t: number): Point => {
    const off = curve(t)
    return [from[0] + along[0] * t - along[1] * off, from[1] + along[1] * t + along[0] * off]
  }
  const [start, end] = [curve(0), curve(length)]
  let bow = 0
  for (let i = 0; i <= 200; i++) {
    const t = (length * i) / 200
    bow = Math.max(bow, Math.abs(curve(t) - start - ((end - start) * t) / length))
  }
  return {
    angle: lineAngle(place(0), place(length)),
    bow,
    bow_percent: (100 * bow) / picture.height,
    warnings: found.length < 0.8 * stationsOf(length) ? [words.lineInParts] : [],
  }
}

/** A cubic by least squares, fitted twice: the second time without what lies far off. Scatter is the usual distance from it, px. */
function cubic(
  points: readonly (readonly [number, number])[],
  length: number,
): { curve: (t: number) => number; scatter: number } {
  let near = points
  let curve = fitCubic(near, length)
  const offs = points.map(([t, off]) => Math.abs(off - curve(t)))
  const usual = [...offs].sort((one, other) => one - other)[offs.length >> 1] ?? Number.NaN
  near = points.filter((_, i) => (offs[i] as number) <= 4 * usual + 1e-9)
  if (near.length >= 4) curve = fitCubic(near, length)
  return { curve, scatter: usual }
}

/** Solves the normal equations of Legendre polynomials, which are nearly independent over evenly spread stations. */
function fitCubic(points: readonly (readonly [number, number])[], length: number): (t: number) => number {
  const basis = (t: number): number[] => {
    const u = (2 * t) / length - 1
    return [1, u, (3 * u * u - 1) / 2, (5 * u ** 3 - 3 * u) / 2]
  }
  const matrix = Array.from({ length: 4 }, () => new Float64Array(5))
  for (const [t, off] of points) {
    const terms = basis(t)
    for (let i = 0; i < 4; i++) {
      const row = matrix[i] as Float64Array
      for (let j = 0; j < 4; j++) row[j] = (row[j] as number) + (terms[i] as number) * (terms[j] as number)
      row[4] = (row[4] as number) + (terms[i] as number) * off
    }
  }
  const coefficients = solved(matrix)
  return (t) => basis(t).reduce((sum, term, i) => sum + term * (coefficients[i] as number), 0)
}

function solved(rows: Float64Array[]): number[] {
  for (let i = 0; i < 4; i++) {
    const pivot = rows[i] as Float64Array
    pivot[i] = (pivot[i] as number) + 1e-12
    for (let j = 0; j < 4; j++) {
      if (j === i) continue
      const row = rows[j] as Float64Array
      const factor = (row[i] as number) / (pivot[i] as number)
      for (let k = i; k < 5; k++) row[k] = (row[k] as number) - factor * (pivot[k] as number)
    }
  }
  return rows.map((row, i) => (row[4] as number) / (row[i] as number))
}
