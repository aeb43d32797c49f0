import { between, distance, type Point, point, type Segment } from './geometry.ts'

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value))

/** The outline of a lamp; the middle of its front is at `at`. */
export function lampOutline(at: Point, aim: Point, pxPerMetre: number): readonly Point[] {
  const across = clamp(0.16 * pxPerMetre, 15, 30) / 2
  const along = clamp(0.09 * pxPerMetre, 9, 17)
  const far = distance(at, aim)
  // A lamp aimed along the line of sight appears as a square.
  if (far < 0.5) {
    return [
      point(at.x - across, at.y - across),
      point(at.x + across, at.y - across),
      point(at.x + across, at.y + across),
      point(at.x - across, at.y + across),
    ]
  }
  const way = point((aim.x - at.x) / far, (aim.y - at.y) / far)
  const corner = (sideways: number, back: number) =>
    point(at.x - way.y * sideways - way.x * back, at.y + way.x * sideways - way.y * back)
  return [corner(across, 0), corner(-across, 0), corner(-across, along), corner(across, along)]
}

/** The two strokes of an arrowhead at the end of a line; none for a line shorter than 12 px. */
export function arrowhead(from: Point, to: Point): readonly Segment[] {
  const far = distance(from, to)
  if (far < 12) return []
  const neck = between(to, from, 7 / far)
  const way = point(((to.x - from.x) / far) * 2.5, ((to.y - from.y) / far) * 2.5)
  return [
    { from: point(neck.x - way.y, neck.y + way.x), to },
    { from: point(neck.x + way.y, neck.y - way.x), to },
  ]
}
