import { FrameError } from '../problem.ts'
import * as words from './words.ts'

/** A rectangle of luminance, row by row. */
export interface Region {
  readonly width: number
  readonly height: number
  readonly values: Float64Array
}

/** A nearly vertical edge: at the height y of a row’s middle it is at `at + slope · y`; x and y count from the region’s corner. */
export interface EdgeLine {
  readonly region: Region
  readonly at: number
  readonly slope: number
  /** Luminance of its dark and its bright side, as far as the box shows them. */
  readonly dark: number
  readonly bright: number
}

const NO_EDGE = words.aroundOneEdge
/** Over its rows an edge must pass through a whole pixel, or its profile has gaps. */
const LEAST_SHIFT = 1
const LEAST_ROWS = 8
const ROUNDS = 6

/** Finds the straight edge in a region; one nearer the horizontal is turned over. Throws FrameError where there is none. */
export function findEdgeLine(found: Region, where: string): EdgeLine {
  const region = isUpright(found) ? found : transposed(found)
  const [dark, bright] = levelsOf(region)
  if (!(bright - dark > 0.02 * (bright + dark))) throw new FrameError(words.noEdge(where, NO_EDGE))
  let line = firstLine(region, dark, bright, where)
  for (let round = 0; round < ROUNDS; round++) line = refined(region, line, where)
  if (!sidesDifferBy(region, line, 0.5 * (bright - dark))) throw new FrameError(words.noEdge(where, NO_EDGE))
  const rows = rowsWithin(region, line)
  if (Math.abs(line.slope) > 1.02) throw new FrameError(words.tilted(where, NO_EDGE))
  if (Math.abs(line.slope) * rows < LEAST_SHIFT)
    throw new FrameError(words.tooSquare(where, (Math.abs(line.slope) * rows).toFixed(2), rows))
  return { region, ...line, dark, bright }
}

/** Rows that are looked at to tell an upright edge from a level one: no more are needed. */
const MOST_ROWS = 500

/** Whether the light changes more across than down; sums over three neighbours reduce noise. */
function isUpright({ width, height, values }: Region): boolean {
  let [across, down] = [0, 0]
  const step = Math.ceil(height / MOST_ROWS)
  for (let y = 1; y < height - 1; y += step) {
    const [above, here, below] = [-1, 0, 1].map((off) => values.subarray((y + off) * width, (y + off + 1) * width)) as [
      Float64Array,
      Float64Array,
      Float64Array,
    ]
    for (let x = 1; x < width - 1; x++) {
      const left = (above[x - 1] as number) + (here[x - 1] as number) + (below[x - 1] as number)
      const right = (above[x + 1] as number) + (here[x + 1] as number) + (below[x + 1] as number)
      const top = (above[x - 1] as number) + (above[x] as number) + (above[x + 1] as number)
      const bottom = (below[x - 1] as number) + (below[x] as number) + (below[x + 1] as number)
      across += (right - left) ** 2
      down += (bottom - top) ** 2
    }
  }
  return across >= down
}

function transposed({ width, height, values }: Region): Region {
  const turned = new Float64Array(values.length)
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++) turned[x * height + y] = values[at++] as number
  return { width: height, height: width, values: turned }
}

/** The luminance that a tenth of the pixels are below and above. */
function levelsOf({ values }: Region): [number, number] {
  const step = Math.max(1, Math.floor(values.length / 100_000))
  const sample = Float64Array.from(
    { length: Math.floor(values.length / step) },
    (_, i) => values[i * step] as number,
  ).sort()
  const at = (share: number): number => sample[Math.floor(share * (sample.length - 1))] as number
  return [at(0.05), at(0.95)]
}

type Line = Pick<EdgeLine, 'at' | 'slope'>

/** Where each row changes sides, by how much of it is dark: noise and blur cancel out. */
function firstLine({ width, height, values }: Region, dark: number, bright: number, where: string): Line {
  const rises = sidesDiffer({ width, height, values }) > 0
  const points: [number, number][] = []
  for (let y = 0; y < height; y++) {
    let covered = 0
    for (let x = 0; x < width; x++) {
      const share = ((values[y * width + x] as number) - dark) / (bright - dark)
      covered += rises ? 1 - share : share
    }
    if (covered > 0.12 * width && covered < 0.88 * width) points.push([y + 0.5, covered])
  }
  if (points.length < LEAST_ROWS) throw new FrameError(words.noEdgeMiddle(where, NO_EDGE))
  return fitted(points)
}

/** How much more light there is right than left. */
function sidesDiffer({ width, height, values }: Region): number {
  let sum = 0
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) sum += (values[y * width + x] as number) * Math.sign(x + 0.5 - width / 2)
  return sum
}

/** Whether the light on the two sides of a line differs by at least so much on average. */
function sidesDifferBy({ width, height, values }: Region, { at, slope }: Line, least: number): boolean {
  const [sums, counts] = [
    [0, 0],
    [0, 0],
  ]
  for (let y = 0, i = 0; y < height; y++) {
    const middle = at + slope * (y + 0.5)
    for (let x = 0; x < width; x++, i++) {
      const side = x + 0.5 < middle ? 0 : 1
      sums[side] = (sums[side] as number) + (values[i] as number)
      counts[side] = (counts[side] as number) + 1
    }
  }
  const [left, right] = sums.map((sum, side) => sum / (counts[side] as number)) as [number, number]
  return Math.abs(left - right) >= least
}

/** How far around the edge its middle is looked for, pixels. */
const reachIn = ({ width }: Region): number => Math.max(4, Math.min(width / 4, 24))

function rowsWithin(region: Region, { at, slope }: Line): number {
  const reach = reachIn(region)
  let rows = 0
  for (let y = 0; y < region.height; y++) {
    const middle = at + slope * (y + 0.5)
    if (middle - reach >= 1 && middle + reach <= region.width - 1) rows++
  }
  return rows
}

/** The centroid of each row’s derivative under a Hamming window around the last line, and a line through them. */
function refined(region: Region, { at, slope }: Line, where: string): Line {
  const { width, height, values } = region
  const reach = reachIn(region)
  const points: [number, number][] = []
  for (let y = 0; y < height; y++) {
    const middle = at + slope * (y + 0.5)
    if (!(middle - reach >= 1 && middle + reach <= width - 1)) continue
    let [moment, sum] = [0, 0]
    for (let x = Math.ceil(middle - reach); x <= middle + reach && x < width; x++) {
      if (x < 1) continue
      // The change between two pixels lies on the border between them.
      const change = (values[y * width + x] as number) - (values[y * width + x - 1] as number)
      const weight = 0.54 + 0.46 * Math.cos((Math.PI * (x - middle)) / reach)
      moment += change * weight * (x - middle)
      sum += change * weight
    }
    const off = moment / sum
    if (Math.abs(off) < reach) points.push([y + 0.5, middle + off])
  }
  if (points.length < LEAST_ROWS) throw new FrameError(words.noStraightEdge(where, NO_EDGE))
  return fitted(points)
}

/** A straight line through points; those far off are left out. */
function fitted(points: readonly (readonly [number, number])[]): Line {
  const line = leastSquares(points)
  const offs = points.map(([y, x]) => Math.abs(x - line.at - line.slope * y))
  const usual = [...offs].sort((one, other) => one - other)[offs.length >> 1] as number
  const near = points.filter((_, i) => (offs[i] as number) <= 4 * usual + 1e-9)
  return near.length >= LEAST_ROWS ? leastSquares(near) : line
}

function leastSquares(points: readonly (readonly [number, number])[]): Line {
  const n = points.length
  const [y0, x0] = [0, 1].map((i) => points.reduce((sum, point) => sum + (point[i] as number), 0) / n) as [
    number,
    number,
  ]
  let [xy, yy] = [0, 0]
  for (const [y, x] of points) {
    xy += (y - y0) * (x - x0)
    yy += (y - y0) ** 2
  }
  const slope = yy > 0 ? xy / yy : 0
  return { at: x0 - slope * y0, slope }
}
