import { fitLine } from '../../functions/acceptance/samples.ts'
import type { Point } from '../areas/area.ts'
import { followEdge } from '../areas/follow.ts'
import type { LitPicture } from '../colour/light.ts'
import { coarseOf } from './coarse.ts'
import { type Corners, fourCorners } from './four-corners.ts'
import { outlineIn } from './outline.ts'

/** Sides are followed between these shares of their length: corners may be round or bent. */
const FROM = 0.08
const TO = 0.92
/** Shorter sides than this share of the picture’s longer side are no card. */
const SHORTEST = 0.06
/** A side must be found at so many of the places looked at, and lie so near to a straight line: px, and a share of its length. */
const LEAST_FOUND = 0.6
const SCATTER = { px: 1.5, share: 0.002 }

interface Line {
  readonly at: Point
  readonly along: Point
}

/** How far beside the rough side it is looked for: px, and pixels of the small picture. */
const LEAST_REACH = 6
const REACH = 3

/**
 * The corners of the one card, sheet or chart in a picture that is brighter or darker than its ground: top left, top right,
 * bottom right, bottom left. Each is where two sides meet that were followed in the whole picture. Undefined where that is
 * not safe: two things could be meant, one reaches out of the picture, it has not four straight sides.
 */
export function findCorners(picture: LitPicture): Corners | undefined {
  const coarse = coarseOf(picture)
  const outline = outlineIn(coarse)
  const rough = outline && fourCorners(outline)
  if (!rough) return undefined
  const least = SHORTEST * Math.max(picture.width, picture.height)
  const near = whereSidesMeet(picture, rough, least, coarse.step)
  // Where a rough corner was off, its sides were followed askew: a second time they are looked for where they are.
  const corners = near && whereSidesMeet(picture, near, least, coarse.step)
  const isWhole = corners?.every((corner, i) => isInside(corner, picture) && isNear(corner, rough[i] as Point, least))
  return isWhole ? corners : undefined
}

/** Where the four sides between corners meet, followed in the picture; undefined where one of them is not found. */
function whereSidesMeet(picture: LitPicture, corners: Corners, least: number, step: number): Corners | undefined {
  const sides = corners.map((corner, i) => sideBetween(picture, corner, corners[(i + 1) % 4] as Point, least, step))
  const met = sides.map((side, i) => side && crossing(sides.at(i - 1), side))
  return met.every((corner) => corner !== undefined) ? (met as unknown as Corners) : undefined
}

function sideBetween(picture: LitPicture, from: Point, to: Point, least: number, step: number): Line | undefined {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (length < Math.max(least, 20)) return undefined
  const between = (share: number): Point => [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]
  const [start, end] = [between(FROM), between(TO)]
  const { found, looked } = followEdge(picture, start, end, Math.max(LEAST_REACH, REACH * step))
  const line = straightThrough(found)
  if (!line || found.length < LEAST_FOUND * looked) return undefined
  if (line.scatter > Math.max(SCATTER.px, SCATTER.share * length)) return undefined
  const along: Point = [(end[0] - start[0]) / (length * (TO - FROM)), (end[1] - start[1]) / (length * (TO - FROM))]
  const place = (t: number): Point => {
    const off = line.offset + line.slope * t
    return [start[0] + along[0] * t - along[1] * off, start[1] + along[1] * t + along[0] * off]
  }
  const [first, last] = [place(0), place(length * (TO - FROM))]
  return { at: first, along: [last[0] - first[0], last[1] - first[1]] }
}

/** A straight line by least squares, fitted again without what lies far off it; scatter is the usual distance from it. */
function straightThrough(
  points: readonly (readonly [number, number])[],
): { offset: number; slope: number; scatter: number } | undefined {
  if (points.length < 8) return undefined
  let near = points
  let line = fitted(near)
  for (let pass = 0; pass < 3; pass++) {
    const offs = points.map(([t, off]) => Math.abs(off - line.offset - line.slope * t))
    const usual = [...offs].sort((one, other) => one - other)[offs.length >> 1] as number
    near = points.filter((_, i) => (offs[i] as number) <= 3 * usual + 1e-9)
    if (near.length < points.length / 2) return undefined
    line = fitted(near)
  }
  const offs = points.map(([t, off]) => Math.abs(off - line.offset - line.slope * t))
  return { ...line, scatter: [...offs].sort((one, other) => one - other)[offs.length >> 1] as number }
}

function fitted(points: readonly (readonly [number, number])[]): { offset: number; slope: number } {
  const { slope, intercept } = fitLine(
    points.map(([t]) => t),
    points.map(([, off]) => off),
  )
  return { offset: intercept, slope }
}

/** Where two lines meet; undefined where they run alike. */
function crossing(one: Line | undefined, other: Line): Point | undefined {
  if (!one) return undefined
  const [[x, y], [u, v]] = [one.along, other.along]
  const determinant = x * v - y * u
  if (Math.abs(determinant) < 1e-6 * Math.hypot(x, y) * Math.hypot(u, v)) return undefined
  const t = ((other.at[0] - one.at[0]) * v - (other.at[1] - one.at[1]) * u) / determinant
  return [one.at[0] + t * x, one.at[1] + t * y]
}

const isInside = ([x, y]: Point, { width, height }: LitPicture): boolean =>
  x >= 0 && y >= 0 && x <= width && y <= height

const isNear = ([x, y]: Point, [u, v]: Point, within: number): boolean => Math.hypot(x - u, y - v) <= within
