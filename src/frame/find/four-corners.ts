import type { Point } from '../areas/area.ts'
import { areaOf } from './outline.ts'

export type Corners = readonly [Point, Point, Point, Point]

/** A rectangle seen obliquely fills its outline; of a disc four corners fill two thirds. */
const LEAST_FILLED = 0.93
/** An angle farther from a right one is no card photographed from in front. */
const MOST_OFF_SQUARE = (30 * Math.PI) / 180

/**
 * The four corners that a convex outline has, clockwise from the upper left; undefined where it has not four. The outline
 * loses the corner that cuts off the least, until four are left (Visvalingam and Whyatt 1993); of the steps of an oblique
 * side that may leave one beside the corner, so each is then moved to where the four enclose the most.
 */
export function fourCorners(outline: readonly Point[]): Corners | undefined {
  const left = outline.map((_, i) => i)
  const at = (places: readonly number[], i: number): Point => outline[places.at(i % places.length) as number] as Point
  while (left.length > 4) {
    const cut = left.map((_, i) => areaOf([at(left, i - 1), at(left, i), at(left, i + 1)]))
    left.splice(cut.indexOf(Math.min(...cut)), 1)
  }
  if (left.length < 4) return undefined
  const points = farthestOut(outline, left)
  if (areaOf(points) < LEAST_FILLED * areaOf(outline)) return undefined
  const corners = fromUpperLeft(points as unknown as Corners)
  return corners.every((one, i) => isSquare(corners.at(i - 1) as Point, one, corners[(i + 1) % 4] as Point))
    ? corners
    : undefined
}

/** Four places of an outline, each moved between its neighbours until the four enclose the most. */
function farthestOut(outline: readonly Point[], start: readonly number[]): Point[] {
  const places = [...start]
  const size = outline.length
  const point = (i: number): Point => outline[(places[i % 4] as number) % size] as Point
  for (let isMoved = true; isMoved; ) {
    isMoved = false
    for (let i = 0; i < 4; i++) {
      const [before, after] = [point(i + 3), point(i + 1)]
      const enclosed = (place: number): number => areaOf([before, outline[place % size] as Point, after])
      const from = places[(i + 3) % 4] as number
      const between = ((places[(i + 1) % 4] as number) - from + size) % size
      for (let step = 1; step < between; step++) {
        const place = (from + step) % size
        // By more than rounding, so that each move encloses more and there is an end.
        if (enclosed(place) <= enclosed(places[i] as number) * (1 + 1e-9)) continue
        places[i] = place
        isMoved = true
      }
    }
  }
  return places.map((_, i) => point(i))
}

/** The corners in the same order, the one nearest to the upper left of their box first. */
function fromUpperLeft(corners: Corners): Corners {
  const [left, top] = [Math.min(...corners.map(([x]) => x)), Math.min(...corners.map(([, y]) => y))]
  const far = corners.map(([x, y]) => Math.hypot(x - left, y - top))
  return turnedBy(corners, far.indexOf(Math.min(...far)))
}

/** The corners counted from another one of them. */
export const turnedBy = (corners: Corners, by: number): Corners =>
  corners.map((_, i) => corners[(i + by) % 4]) as unknown as Corners

function isSquare(before: Point, at: Point, after: Point): boolean {
  const [x, y] = [before[0] - at[0], before[1] - at[1]]
  const [u, v] = [after[0] - at[0], after[1] - at[1]]
  const angle = Math.atan2(Math.abs(x * v - y * u), x * u + y * v)
  return Math.abs(angle - Math.PI / 2) <= MOST_OFF_SQUARE
}
