import { FrameError } from '../problem.ts'
import type { EdgeLine } from './edge-line.ts'
import * as words from './words.ts'

/** Luminance across an edge, along its normal, at even steps. */
export interface EdgeProfile {
  readonly values: Float64Array
  /** Pixels from one value to the next. */
  readonly step: number
  /** Mean square distance of the pixels of a bin from their middle, px². */
  readonly scatter: number
}

/** Bins of a quarter of a pixel, as the standard has it; wider ones where a tilt repeats few places, as 1 in 3 does. */
const STEPS = [1 / 4, 1 / 3, 1 / 2]

interface Bins {
  readonly counts: Float64Array
  readonly sums: Float64Array
  readonly places: Float64Array
  readonly squares: Float64Array
  readonly step: number
}

/** Gathers the pixels by their distance from the edge. Throws FrameError where the edge is none, or its surroundings are too narrow. */
export function edgeProfile(line: EdgeLine, where: string): EdgeProfile {
  for (const step of STEPS) {
    const bins = binned(line, step)
    const reach = reachOf(bins)
    if (reach * step < 4) continue
    return cut(bins, reach, line, where)
  }
  throw new FrameError(words.repeats(where))
}

function binned({ region: { width, height, values }, at, slope }: EdgeLine, step: number): Bins {
  const cosine = 1 / Math.hypot(1, slope)
  const half = Math.ceil(width / step)
  const make = (): Float64Array => new Float64Array(2 * half + 1)
  const [counts, sums, places, squares] = [make(), make(), make(), make()]
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) {
      const distance = (x + 0.5 - at - slope * (y + 0.5)) * cosine
      const bin = Math.round(distance / step) + half
      if (bin < 0 || bin > 2 * half) continue
      const off = distance - (bin - half) * step
      counts[bin] = (counts[bin] as number) + 1
      sums[bin] = (sums[bin] as number) + (values[i] as number)
      places[bin] = (places[bin] as number) + off
      squares[bin] = (squares[bin] as number) + off * off
    }
  return { counts, sums, places, squares, step }
}

/** The number of bins on either side of the edge that all have pixels. */
function reachOf({ counts }: Bins): number {
  const half = (counts.length - 1) / 2
  let reach = -1
  while (reach < half && (counts[half + reach + 1] as number) > 0 && (counts[half - reach - 1] as number) > 0) reach++
  return reach
}

/** The means of the bins, moved from where their pixels are on average to their middles. */
function cut({ counts, sums, places, squares, step }: Bins, reach: number, line: EdgeLine, where: string): EdgeProfile {
  const from = (counts.length - 1) / 2 - reach
  const size = 2 * reach + 1
  const mean = Float64Array.from({ length: size }, (_, i) => (sums[from + i] as number) / (counts[from + i] as number))
  const off = Float64Array.from({ length: size }, (_, i) => (places[from + i] as number) / (counts[from + i] as number))
  const values = mean.map((value, i) => {
    const [before, after] = [Math.max(0, i - 1), Math.min(size - 1, i + 1)]
    const run = (after - before) * step + (off[after] as number) - (off[before] as number)
    return value - ((off[i] as number) * ((mean[after] as number) - (mean[before] as number))) / run
  })
  let [scatter, weight] = [0, 0]
  for (let i = 1; i < size; i++) {
    const slope = Math.abs((values[i] as number) - (values[i - 1] as number))
    scatter += slope * ((squares[from + i] as number) / (counts[from + i] as number) - (off[i] as number) ** 2)
    weight += slope
  }
  const half = around(values, step, line, where)
  const middle = reach
  return { values: values.slice(middle - half, middle + half + 1), step, scatter: weight > 0 ? scatter / weight : 0 }
}

/** How many steps on either side are looked at: enough for the whole of a soft edge, no more noise than need be. */
function around(values: Float64Array, step: number, { dark, bright }: EdgeLine, where: string): number {
  const reach = (values.length - 1) / 2
  const outer = Math.max(2, Math.round(reach / 6))
  const meanOf = (part: Float64Array): number => part.reduce((sum, value) => sum + value, 0) / part.length
  const [left, right] = [meanOf(values.subarray(0, outer)), meanOf(values.subarray(values.length - outer))]
  const contrast = right - left
  if (Math.abs(contrast) < 0.5 * (bright - dark)) throw new FrameError(words.severalEdges(where))
  const share = (level: number): number => {
    // Using the last place below and the first above excludes noise on the plateaus.
    let [first, last] = [-1, -1]
    for (let i = 0; i < values.length; i++) {
      const value = ((values[i] as number) - left) / contrast
      if (value >= level && first < 0) first = i
      if (value <= level) last = i
    }
    return (first + last) / 2
  }
  const rise = (share(0.9) - share(0.1)) * step
  if (rise > 0.65 * reach * step) throw new FrameError(words.blurred(where, rise.toFixed(0)))
  return Math.min(reach, Math.round(Math.max(8, 4 * rise + 4) / step))
}
