import { bisect } from '../../units/index.ts'
import type { Metres, Radians } from '../canvas/measures.ts'

/** A point of the frame in sensor pixels from its middle: x right, y up. */
export interface Place {
  readonly x: number
  readonly y: number
}

/** The tilt of a camera that is aimed at the middle of the original. */
export interface CameraTilt {
  /** Positive if the upper edge is the farther one. */
  readonly tilt: Radians
  /** Positive if the right edge is the farther one. */
  readonly tiltAcross: Radians
}

/** A camera that is square to the original. */
export interface SquareFrame {
  readonly fieldWidth: Metres
  readonly fieldHeight: Metres
  /** Distance from the entrance pupil to the original. */
  readonly distance: Metres
  readonly pixelsWidth: number
  readonly pixelsHeight: number
}

/** Signs of x and y of the corners, clockwise from the upper left. */
const CORNERS: readonly (readonly [number, number])[] = [
  [-1, 1],
  [1, 1],
  [1, -1],
  [-1, -1],
]

/** The least distance at which a point is visible, as a fraction of the distance of the original. */
const NEAREST = 0.02

/**
 * The corners of the square field in the frame of a tilted camera; undefined if one of them would be beside or behind
 * the lens.
 */
export function projectedCorners(frame: SquareFrame, { tilt, tiltAcross }: CameraTilt): readonly Place[] | undefined {
  const { fieldWidth, fieldHeight, distance, pixelsWidth, pixelsHeight } = frame
  const seen = CORNERS.map(([right, up]) => {
    const [x, y] = [(right * fieldWidth) / 2, (up * fieldHeight) / 2]
    const back = y * Math.sin(tilt)
    const depth = distance + back * Math.cos(tiltAcross) + x * Math.sin(tiltAcross)
    if (!(depth > distance * NEAREST)) return undefined
    const across = x * Math.cos(tiltAcross) - back * Math.sin(tiltAcross)
    const magnification = distance / depth
    return {
      x: (across * magnification * pixelsWidth) / fieldWidth,
      y: (y * Math.cos(tilt) * magnification * pixelsHeight) / fieldHeight,
    }
  })
  return seen.every((one) => one !== undefined) ? seen : undefined
}

/** The corners of a frame, in pixels from its middle, clockwise from the upper left. */
export const squareCorners = ({ pixelsWidth, pixelsHeight }: SquareFrame): readonly Place[] =>
  CORNERS.map(([right, up]) => ({ x: (right * pixelsWidth) / 2, y: (up * pixelsHeight) / 2 }))

/** The lengths of the upper, right, lower and left edge in pixels. */
export const edgeLengths = (corners: readonly Place[]): readonly number[] =>
  corners.map((from, at) => {
    const to = corners[(at + 1) % corners.length] as Place
    return Math.hypot(to.x - from.x, to.y - from.y)
  })

/**
 * The difference of opposite edges in pixels, for the worse pair: the ratio of the longer to the shorter, less one, times
 * the pixels along the edge when square, as `keystone` and `tilt_allowance` define it.
 */
export function edgeDifference(frame: SquareFrame, corners: readonly Place[]): number {
  const [upper, right, lower, left] = edgeLengths(corners) as [number, number, number, number]
  const more = (a: number, b: number): number => Math.max(a, b) / Math.min(a, b) - 1
  return Math.max(more(upper, lower) * frame.pixelsWidth, more(left, right) * frame.pixelsHeight)
}

/** Short of a right angle, where the camera would see the original edge on. */
const GREATEST_TILT_RADIANS = 1.5

/** The tilt in the direction of another at which the edges differ by a number of pixels; undefined if there is none. */
export function tiltForDifference(frame: SquareFrame, way: CameraTilt, pixels: number): CameraTilt | undefined {
  const size = Math.hypot(way.tilt, way.tiltAcross)
  const direction = size > 1e-12 ? { x: way.tilt / size, y: way.tiltAcross / size } : { x: 1, y: 0 }
  const tiltBy = (angle: number): CameraTilt => ({ tilt: direction.x * angle, tiltAcross: direction.y * angle })
  const reached = (angle: number): boolean => {
    const seen = projectedCorners(frame, tiltBy(angle))
    return !seen || edgeDifference(frame, seen) >= pixels
  }
  if (!reached(GREATEST_TILT_RADIANS)) return undefined
  const { failing } = bisect(reached, { failing: 0, passing: GREATEST_TILT_RADIANS }, { halvings: 60 })
  return projectedCorners(frame, tiltBy(failing)) ? tiltBy(failing) : undefined
}
