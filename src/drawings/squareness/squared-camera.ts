/** A corner or another place of the frame, in pixels from its middle: x right, y up. */
export interface Place {
  readonly x: number
  readonly y: number
}

/** A camera aimed at the middle of the original, and how far it leans from square. */
export interface CameraTilt {
  /** Positive: the upper edge is the farther one. */
  readonly tilt: number
  /** Positive: the right edge is the farther one. */
  readonly tiltAcross: number
}

/** What the camera sees when square: its field on the original, its distance, its pixels. */
export interface SquareFrame {
  readonly fieldWidth: number
  readonly fieldHeight: number
  /** From the entrance pupil to the original. */
  readonly distance: number
  readonly pixelsWidth: number
  readonly pixelsHeight: number
}

/** The corners from the upper left, clockwise. */
const CORNERS: readonly (readonly [number, number])[] = [
  [-1, 1],
  [1, 1],
  [1, -1],
  [-1, -1],
]

/** How far below the lens a place may come before it is no longer seen: a share of the distance. */
const NEAREST = 0.02

/**
 * Where the corners of the square field come to lie in the frame of a camera that leans; undefined where one of them
 * would stand beside the lens or behind it.
 */
export function projectedCorners(frame: SquareFrame, { tilt, tiltAcross }: CameraTilt): readonly Place[] | undefined {
  const { fieldWidth, fieldHeight, distance, pixelsWidth, pixelsHeight } = frame
  const seen = CORNERS.map(([right, up]) => {
    const [x, y] = [(right * fieldWidth) / 2, (up * fieldHeight) / 2]
    const back = y * Math.sin(tilt)
    const depth = distance + back * Math.cos(tiltAcross) + x * Math.sin(tiltAcross)
    if (!(depth > distance * NEAREST)) return undefined
    const across = x * Math.cos(tiltAcross) - back * Math.sin(tiltAcross)
    const enlarged = distance / depth
    return {
      x: (across * enlarged * pixelsWidth) / fieldWidth,
      y: (y * Math.cos(tilt) * enlarged * pixelsHeight) / fieldHeight,
    }
  })
  return seen.every((one) => one !== undefined) ? seen : undefined
}

export const squareCorners = ({ pixelsWidth, pixelsHeight }: SquareFrame): readonly Place[] =>
  CORNERS.map(([right, up]) => ({ x: (right * pixelsWidth) / 2, y: (up * pixelsHeight) / 2 }))

/** The lengths of the edges: upper, right, lower, left. */
export const edgeLengths = (corners: readonly Place[]): readonly number[] =>
  corners.map((from, at) => {
    const to = corners[(at + 1) % corners.length] as Place
    return Math.hypot(to.x - from.x, to.y - from.y)
  })

/**
 * By how many pixels opposite edges differ, the worse pair: the longer over the shorter, less one, times the pixels
 * along the edge when square, as `keystone` and `tilt_allowance` reckon.
 */
export function edgeDifference(frame: SquareFrame, corners: readonly Place[]): number {
  const [upper, right, lower, left] = edgeLengths(corners) as [number, number, number, number]
  const more = (a: number, b: number): number => Math.max(a, b) / Math.min(a, b) - 1
  return Math.max(more(upper, lower) * frame.pixelsWidth, more(left, right) * frame.pixelsHeight)
}

const STEPS = 60

/** The lean, the same way as another, at which the edges differ by so many pixels; undefined where none is seen. */
export function tiltForDifference(frame: SquareFrame, way: CameraTilt, pixels: number): CameraTilt | undefined {
  const size = Math.hypot(way.tilt, way.tiltAcross)
  const direction = size > 1e-12 ? { x: way.tilt / size, y: way.tiltAcross / size } : { x: 1, y: 0 }
  const tiltBy = (angle: number): CameraTilt => ({ tilt: direction.x * angle, tiltAcross: direction.y * angle })
  const reached = (angle: number): boolean => {
    const seen = projectedCorners(frame, tiltBy(angle))
    return !seen || edgeDifference(frame, seen) >= pixels
  }
  let [low, high] = [0, 1.5]
  if (!reached(high)) return undefined
  for (let step = 0; step < STEPS; step++) {
    const middle = (low + high) / 2
    if (reached(middle)) high = middle
    else low = middle
  }
  return projectedCorners(frame, tiltBy(low)) ? tiltBy(low) : undefined
}
