import type { LitPicture } from '../colour/light.ts'
import type { Point, RuleArea } from './area.ts'
import { checkInside } from './pixels.ts'
import * as words from './words.ts'

export interface RuleReading {
  /** px/m. */
  readonly sampling: number
  readonly ppi: number
  /** Degrees from the x axis, clockwise positive, in (−90, 90]. */
  readonly angle: number
}

const METRES_PER_INCH = 0.0254

/**
 * Measures a known length between two marks: sampling in pixels per metre and ppi, angle in degrees. Throws
 * FrameError where a mark is not in the picture.
 */
export function measureRule({ name, from, to, length }: RuleArea, picture: LitPicture): RuleReading {
  checkInside(from, picture, words.markOf('"from"', `“${name}”`))
  checkInside(to, picture, words.markOf('"to"', `“${name}”`))
  const sampling = Math.hypot(to[0] - from[0], to[1] - from[1]) / length
  return { sampling, ppi: sampling * METRES_PER_INCH, angle: lineAngle(from, to) }
}

/** The angle of a line regardless of its direction, degrees in (−90, 90]; y points down, so clockwise is positive. */
export function lineAngle(from: Point, to: Point): number {
  const [x, y] = [to[0] - from[0], to[1] - from[1]]
  const back = x < 0 || (x === 0 && y < 0)
  return (Math.atan2(back ? -y : y, Math.abs(x)) * 180) / Math.PI + 0
}
