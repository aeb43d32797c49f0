import type { LitPicture } from '../colour/light.ts'
import { FrameError } from '../problem.ts'
import type { Point, SquareArea } from './area.ts'
import { checkInside } from './pixels.ts'
import * as words from './words.ts'

export interface SquareReading {
  /** px by which top and bottom differ in length. */
  readonly keystone_across: number
  /** px by which left and right differ in length. */
  readonly keystone_down: number
  /** Mean angle of top and bottom, degrees, clockwise positive. */
  readonly rotation: number
  /** px/m. */
  readonly sampling_across: number
  readonly sampling_down: number
  /** Mean distance of the four corners from a right angle, degrees. */
  readonly skew: number
}

const DEGREES = 180 / Math.PI
const between = ([x, y]: Point, [u, v]: Point): Point => [u - x, v - y]
const cross = ([x, y]: Point, [u, v]: Point): number => x * v - y * u
const dot = ([x, y]: Point, [u, v]: Point): number => x * u + y * v
const lengthOf = ([x, y]: Point): number => Math.hypot(x, y)

/**
 * Measures four corners of something square: keystone and rotation in degrees, sampling in pixels per metre where
 * its size in metres is known. Throws FrameError where the corners do not go round once, clockwise.
 */
export function measureSquare({ name, corners, width, height }: SquareArea, picture: LitPicture): SquareReading {
  for (const [i, corner] of corners.entries())
    checkInside(corner, picture, words.markOf(words.corner(i + 1), `“${name}”`))
  checkOutline(corners, name)
  const [topLeft, topRight, bottomRight, bottomLeft] = corners
  const top = between(topLeft, topRight)
  const bottom = between(bottomLeft, bottomRight)
  const left = between(topLeft, bottomLeft)
  const right = between(topRight, bottomRight)
  const [u, v] = [unit(top), unit(bottom)]
  const off = corners.map((corner, i) => {
    const [before, after] = [corners[(i + 3) % 4] as Point, corners[(i + 1) % 4] as Point]
    const [one, other] = [between(corner, before), between(corner, after)]
    return Math.abs(Math.atan2(Math.abs(cross(one, other)), dot(one, other)) * DEGREES - 90)
  })
  return {
    keystone_across: Math.abs(lengthOf(top) - lengthOf(bottom)),
    keystone_down: Math.abs(lengthOf(left) - lengthOf(right)),
    // The sum of two directions halves the angle between them, also across ±180°.
    rotation: Math.atan2(u[1] + v[1], u[0] + v[0]) * DEGREES + 0,
    sampling_across: (lengthOf(top) + lengthOf(bottom)) / 2 / width,
    sampling_down: (lengthOf(left) + lengthOf(right)) / 2 / height,
    skew: off.reduce((sum, one) => sum + one, 0) / 4,
  }
}

const unit = (v: Point): Point => [v[0] / lengthOf(v), v[1] / lengthOf(v)]

/** Four corners go round clockwise, each a turn to the right. */
function checkOutline(corners: readonly Point[], name: string): void {
  const turns = corners.map((corner, i) =>
    cross(between(corners[(i + 3) % 4] as Point, corner), between(corner, corners[(i + 1) % 4] as Point)),
  )
  if (turns.every((turn) => turn > 0)) return
  const why = turns.every((turn) => turn < 0) ? words.wrongWay : words.crossing
  throw new FrameError(words.corners(name, why))
}
