import type { Point } from '../areas/area.ts'
import type { Corners } from './four-corners.ts'

type Nine = readonly [number, number, number, number, number, number, number, number, number]

/** The projective map that takes the corners of the unit square to four others (Heckbert 1989, closed form). */
function fromUnit([[x0, y0], [x1, y1], [x2, y2], [x3, y3]]: Corners): Nine {
  const [sx, sy] = [x0 - x1 + x2 - x3, y0 - y1 + y2 - y3]
  const [dx1, dx2, dy1, dy2] = [x1 - x2, x3 - x2, y1 - y2, y3 - y2]
  const determinant = dx1 * dy2 - dx2 * dy1
  const g = (sx * dy2 - dx2 * sy) / determinant
  const h = (dx1 * sy - sx * dy1) / determinant
  return [x1 - x0 + g * x1, x3 - x0 + h * x3, x0, y1 - y0 + g * y1, y3 - y0 + h * y3, y0, g, h, 1]
}

const adjugate = ([a, b, c, d, e, f, g, h, i]: Nine): Nine => [
  e * i - f * h,
  c * h - b * i,
  b * f - c * e,
  f * g - d * i,
  a * i - c * g,
  c * d - a * f,
  d * h - e * g,
  b * g - a * h,
  a * e - b * d,
]

const apply = ([a, b, c, d, e, f, g, h, i]: Nine, [x, y]: Point): Point => {
  const w = g * x + h * y + i
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w]
}

/** Takes every point of a plane to where it lies once four of its points lie elsewhere. */
export function projection(from: Corners, to: Corners): (point: Point) => Point {
  const [back, forth] = [adjugate(fromUnit(from)), fromUnit(to)]
  return (point) => apply(forth, apply(back, point))
}
