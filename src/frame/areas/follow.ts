import type { LitPicture } from '../colour/light.ts'
import type { Point } from './area.ts'

/** How far on either side of the marks the line is looked for: a share of its length, within these, px. */
const REACH = { share: 0.03, least: 6, most: 60 }
const MOST_STATIONS = 400

/** At how many places a line of a length, px, is looked for. */
export const stationsOf = (length: number): number => Math.min(MOST_STATIONS, Math.floor(length / 2))

/** The place of the line across the marks at stations along them: pairs of how far along and how far aside, px. */
export function follow(
  picture: LitPicture,
  from: Point,
  along: Point,
  length: number,
  reach = Math.min(REACH.most, Math.max(REACH.least, REACH.share * length)),
): [number, number][] {
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
/** How many steps of a peak beyond those above a third of its height: a pixel and a half. */
const FOOT = 3

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

/** The centroid of a peak; undefined where nothing rises out of the rest. */
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
  // The foot of the peak counts as well: without it an edge that runs along a row of pixels moves towards the nearer one.
  first = Math.max(0, first - FOOT)
  last = Math.min(weights.length - 1, last + FOOT)
  let [sum, moment] = [0, 0]
  for (let i = first; i <= last; i++) {
    const weight = weights[i] as number
    sum += weight
    moment += weight * i
  }
  return sum > 0 ? moment / sum : top
}

/** An edge or line within a reach, px, on either side of two marks, and at how many places it was looked for. */
export function followEdge(
  picture: LitPicture,
  from: Point,
  to: Point,
  reach: number,
): { found: readonly (readonly [number, number])[]; looked: number } {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  return { found: follow(picture, from, along, length, reach), looked: stationsOf(length) }
}
