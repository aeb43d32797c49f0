import type { LitPicture } from '../colour/light.ts'
import { FrameError } from '../problem.ts'
import type { LineArea, Point } from './area.ts'
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

/** How far on either side of the marks the line is looked for: a share of its length, within these, px. */
const REACH = { share: 0.03, least: 6, most: 60 }
const MOST_STATIONS = 400
const LEAST_STATIONS = 12
const SHORTEST = 30

/**
 * Follows a straight edge or a ruled line along two marks and fits a cubic to where it is found.
 * The bow is the greatest distance of the curve from the straight between its ends. Throws FrameError where there is no line.
 */
export function measureLine({ name, from, to }: LineArea, picture: LitPicture): LineReading {
  const where = `“${name}”`
  checkInside(from, picture, `"from" of ${where}`)
  checkInside(to, picture, `"to" of ${where}`)
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

const stationsOf = (length: number): number => Math.min(MOST_STATIONS, Math.floor(length / 2))

/** The place of the line across the marks at stations along them: pairs of how far along and how far aside, px. */
function follow(picture: LitPicture, from: Point, along: Point, length: number): [number, number][] {
  const reach = Math.min(REACH.most, Math.max(REACH.least, REACH.share * length))
  const stations = stationsOf(length)
  const profiles = Array.from({ length: stations }, (_, i) => {
    const t = (length * (i + 0.5)) / stations
    return { t, values: across(picture, [from[0] + along[0] * t, from[1] + along[1] * t], along, reach) }
  })
  const isLine = lineRatherThanEdge(profiles.map(({ values }) => values))
  return profiles.flatMap(({ t, values }) => {
    const off = isLine ? centreOf(values, depthOf(values)) : centreOf(values, changesOf(values))
    return off === undefined ? [] : [[t, off * STEP - reach] as [number, number]]
  })
}

const STEP = 0.5

/** Luminance along the normal, every half pixel, from −reach to reach; NaN out of the picture. */
function across(picture: LitPicture, [x, y]: Point, along: Point, reach: number): Float64Array {
  return Float64Array.from({ length: Math.round((2 * reach) / STEP) + 1 }, (_, i) => {
    const off = i * STEP - reach
    return luminanceAt(picture, x - along[1] * off, y + along[0] * off)
  })
}

/** Luminance between the pixels, linear in both directions. */
function luminanceAt({ samples, width, height, channels, luminance }: LitPicture, x: number, y: number): number {
  if (x < 0 || y < 0 || x > width || y > height) return Number.NaN
  const [u, v] = [Math.min(Math.max(x - 0.5, 0), width - 1), Math.min(Math.max(y - 0.5, 0), height - 1)]
  const [left, top] = [
    Math.min(Math.floor(u), Math.max(0, width - 2)),
    Math.min(Math.floor(v), Math.max(0, height - 2)),
  ]
  const at = (column: number, row: number): number => {
    const pixel = (Math.min(row, height - 1) * width + Math.min(column, width - 1)) * channels
    let Y = 0
    for (let c = 0; c < channels; c++) Y += (luminance[c] as Float64Array)[samples[pixel + c] as number] as number
    return Y
  }
  const [fx, fy] = [u - left, v - top]
  const above = at(left, top) * (1 - fx) + at(left + 1, top) * fx
  const below = at(left, top + 1) * (1 - fx) + at(left + 1, top + 1) * fx
  return above * (1 - fy) + below * fy
}

/** A line has the same light on both sides; an edge has not. */
function lineRatherThanEdge(profiles: readonly Float64Array[]): boolean {
  let [line, edge] = [0, 0]
  for (const values of profiles) {
    const outer = Math.max(2, values.length >> 3)
    const [left, right] = [mean(values.subarray(0, outer)), mean(values.subarray(values.length - outer))]
    if (!Number.isFinite(left + right)) continue
    edge += Math.abs(left - right)
    line += Math.max(...values.map((value) => Math.abs(value - (left + right) / 2)))
  }
  return line > 0.75 * edge && edge < 0.5 * line
}

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** How far each value is from the light on both sides. */
function depthOf(values: Float64Array): Float64Array {
  const outer = Math.max(2, values.length >> 3)
  const [left, right] = [mean(values.subarray(0, outer)), mean(values.subarray(values.length - outer))]
  const depth = values.map((value, i) => value - (left + ((right - left) * i) / (values.length - 1)))
  const sign = Math.max(...depth) >= -Math.min(...depth) ? 1 : -1
  return depth.map((value) => Math.max(0, sign * value))
}

/** How much the light changes around each value, in the direction in which most of it changes. */
function changesOf(values: Float64Array): Float64Array {
  const changes = values.map((_, i) => ((values[i + 1] ?? Number.NaN) - (values[i - 1] ?? Number.NaN)) / 2)
  const inner = changes.map((value) => (Number.isFinite(value) ? value : 0))
  const sign = Math.max(...inner) >= -Math.min(...inner) ? 1 : -1
  return inner.map((value) => Math.max(0, sign * value))
}

/** The centroid of a peak above half its height; undefined where nothing rises out of the rest. */
function centreOf(values: Float64Array, weights: Float64Array): number | undefined {
  if (values.some(Number.isNaN)) return undefined
  const peak = Math.max(...weights)
  const rest = mean(weights)
  const light = Math.max(...values)
  if (!(peak > 3 * rest && peak > 0.01 * light)) return undefined
  const top = weights.indexOf(peak)
  let [first, last] = [top, top]
  while (first > 0 && (weights[first - 1] as number) > 0.3 * peak) first--
  while (last < weights.length - 1 && (weights[last + 1] as number) > 0.3 * peak) last++
  let [sum, moment] = [0, 0]
  for (let i = first; i <= last; i++) {
    const weight = (weights[i] as number) - 0.3 * peak
    sum += weight
    moment += weight * i
  }
  return sum > 0 ? moment / sum : top
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
