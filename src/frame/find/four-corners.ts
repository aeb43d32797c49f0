import type { Point } from '../areas/area.ts'
import { areaOf } from './outline.ts'

export type Corners = readonly [Point, Point, Point, Point]

/** A rectangle seen obliquely fills its outline; of a disc four corners fill two thirds. */
const LEAST_FILLED = 0.93
/** An angle farther from a right one is no card photographed from in front. */
const MOST_OFF_SQUARE = (30 * Math.PI) / 180

/**
 * The four corners that a convex outline has, clockwise from the upper left; undefined where it has not four. The outline
 * loses the corner that cuts off the least, until four are left (Visvalingam and Whyatt 1993).
 */
export function fourCorners(outline: readonly Point[]): Corners | undefined {
  const points = [...outline]
  while (points.length > 4) {
    const cut = points.map((one, i) =>
      areaOf([points.at(i - 1) as Point, one, points[(i + 1) % points.length] as Point]),
    )
    points.splice(cut.indexOf(Math.min(...cut)), 1)
  }
  if (points.length < 4 || areaOf(points) < LEAST_FILLED * areaOf(outline)) return undefined
  const corners = fromUpperLeft(points as unknown as Corners)
  return corners.every((one, i) => isSquare(corners.at(i - 1) as Point, one, corners[(i + 1) % 4] as Point))
    ? corners
    : undefined
}

/** The corners in the same order, the one nearest to the upper left of their box first. */
export function fromUpperLeft(corners: Corners): Corners {
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
