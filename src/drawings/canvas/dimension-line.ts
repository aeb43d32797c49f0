import type { Canvas, TextPlacement } from './canvas.ts'
import { type Box, type Point, point, type Segment } from './geometry.ts'
import { ASCENT, BOLD, DESCENT, textWidth } from './lettering.ts'

/** Distance between parallel dimension lines in pixels. */
export const LANE = 18

const TICK = 3.5
/** Gap before an extension line, and its length past the dimension line, in pixels. */
const GAP = 3
const OVERSHOOT = 4
const ABOVE_LINE = DESCENT + 1.5
/** How much further from a thick line its figure is, which is bold: the next dimension line is just beyond it. */
const FURTHER = 1.2

/** A dimension: the two points it measures and the position of its line, in pixels. */
export interface Dimension {
  /** Its class in the SVG, such as `dimension-lens`. */
  readonly className: string
  readonly direction: 'across' | 'upright'
  readonly from: Point
  readonly to: Point
  /** The y of a horizontal line, the x of a vertical one. */
  readonly at: number
  /** The texts to try, longest first; the last is the figure alone. */
  readonly wordings: readonly string[]
  /** Whether to draw the extension line at each end; another line may already serve as one. */
  readonly extensions?: readonly [boolean, boolean]
  /** Draws the line thick, for the dimension that the present step is about. */
  readonly emphasized?: boolean
}

/** Positions along a dimension line, from its middle outwards, as fractions of the free length. */
const SHARES = Array.from({ length: 41 }, (_, step) => 0.5 + (step % 2 === 0 ? 1 : -1) * Math.ceil(step / 2) * 0.025)

function extension(dimension: Dimension, end: Point): Segment {
  if (dimension.direction === 'across') {
    const way = Math.sign(dimension.at - end.y)
    return { from: point(end.x, end.y + way * GAP), to: point(end.x, dimension.at + way * OVERSHOOT) }
  }
  const way = Math.sign(dimension.at - end.x)
  return { from: point(end.x + way * GAP, end.y), to: point(dimension.at + way * OVERSHOOT, end.y) }
}

const tick = (at: Point): Segment => ({ from: point(at.x - TICK, at.y + TICK), to: point(at.x + TICK, at.y - TICK) })

/** A length with its unit and, for tight places, without it. */
export const figures = (shown: string): readonly string[] => [shown, shown.replace(/ \D+$/, '')]

/** Draws the lines of a dimension. Its figure is placed later, when all lines of the drawing are known. */
export function drawDimension(canvas: Canvas, dimension: Dimension): void {
  const { className, direction, from, to, at, extensions = [true, true], emphasized = false } = dimension
  const [start, end] =
    direction === 'across' ? [point(from.x, at), point(to.x, at)] : [point(at, from.y), point(at, to.y)]
  const reaching = [from, to].filter((_, which) => extensions[which]).map((one) => extension(dimension, one))
  canvas.lines(
    'dimension',
    `${className} extension`,
    reaching.flatMap((one) => canvas.around(one)),
  )
  canvas.line(emphasized ? 'emphasis' : 'dimension', className, start, end)
  canvas.lines(emphasized ? 'emphasis' : 'thin', `${className} tick`, [tick(start), tick(end)])
}

/** Places for the figure of a dimension, the usual ones first. */
function* places(dimension: Dimension): Generator<TextPlacement> {
  const shortest = dimension.wordings.slice(-2)
  for (const text of dimension.wordings) yield* along(dimension, text, -ABOVE_LINE - furtherOf(dimension))
  for (const text of shortest) yield* pastEnds(dimension, text)
  // The far side of the line comes last, for when the near side is occupied.
  for (const text of shortest) yield* along(dimension, text, ASCENT + 2 + furtherOf(dimension))
}

const furtherOf = ({ emphasized = false }: Dimension): number => (emphasized ? FURTHER : 0)
const widthOf = (text: string, { emphasized = false }: Dimension): number => textWidth(text) * (emphasized ? BOLD : 1)

/** Places along the line at a distance `off` from it, starting in the middle. */
function* along(dimension: Dimension, text: string, off: number): Generator<TextPlacement> {
  const { direction, at } = dimension
  const [low, high] = reach(dimension)
  const width = widthOf(text, dimension)
  // A slanted tick takes space at the low end only; on the far side of the line, at the high end only.
  const start = low + (off < 0 ? TICK + 1.5 : 1.5)
  const room = high - low - TICK - 3 - width
  if (room < 0) return
  for (const share of SHARES) {
    const middle = start + width / 2 + share * room
    const upright = direction === 'upright'
    const place = upright ? point(at + off, middle) : point(middle, at + off)
    yield { lettering: { text, at: place, anchor: 'middle', upright, bold: dimension.emphasized === true } }
  }
}

/** Places past either end on the extended line, or beside a vertical line that is too short to write along. */
function* pastEnds(dimension: Dimension, text: string): Generator<TextPlacement> {
  const { direction, at } = dimension
  const [low, high] = reach(dimension)
  const bold = dimension.emphasized === true
  const width = widthOf(text, dimension) + 2 * (TICK + 2)
  if (direction === 'across') {
    yield beyond(dimension, text, point(high, at), point(high + width, at))
    yield beyond(dimension, text, point(low, at), point(low - width, at))
    return
  }
  yield beyond(dimension, text, point(at, low), point(at, low - width))
  for (const share of [0.5, 0.42, 0.58, 0.35, 0.65, 0.27, 0.73, 0.2, 0.8]) {
    const y = low + (high - low) * share + ASCENT / 2
    yield { lettering: { text, at: point(at + 5, y), anchor: 'start', bold } }
    yield { lettering: { text, at: point(at - 5, y), anchor: 'end', bold } }
  }
  yield beyond(dimension, text, point(at, high), point(at, high + width))
}

const reach = ({ direction, from, to }: Dimension): readonly [number, number] =>
  direction === 'across'
    ? [Math.min(from.x, to.x), Math.max(from.x, to.x)]
    : [Math.min(from.y, to.y), Math.max(from.y, to.y)]

function beyond(dimension: Dimension, text: string, from: Point, to: Point): TextPlacement {
  const upright = from.x === to.x
  const middle = point((from.x + to.x) / 2, (from.y + to.y) / 2)
  const off = ABOVE_LINE + furtherOf(dimension)
  const at = upright ? point(middle.x - off, middle.y) : point(middle.x, middle.y - off)
  return {
    lettering: { text, at, anchor: 'middle', upright, bold: dimension.emphasized === true },
    lines: [{ from, to }],
  }
}

/** Writes the figure of a dimension; false if no place is free. */
export const letterDimension = (canvas: Canvas, dimension: Dimension, within: Box): boolean =>
  canvas.placeText(`${dimension.className} figure`, places(dimension), within)
