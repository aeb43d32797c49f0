import { showFigure } from '../../units/index.ts'
import { listText } from '../../units/plural.ts'
import { Canvas, type TextPlacement } from '../canvas/canvas.ts'
import type { Draw, DrawingInputs } from '../canvas/drawing-options.ts'
import { type Box, boxAround, type Point, point } from '../canvas/geometry.ts'
import { ASCENT, DESCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { CANVAS_WORDS as SHARED, TITLES } from '../canvas/words.ts'
import { numberIn } from '../plots/given-values.ts'
import { drawKey, type KeyEntry, keyHeight } from '../plots/key-rows.ts'
import {
  type CameraTilt,
  edgeDifference,
  edgeLengths,
  type Place,
  projectedCorners,
  type SquareFrame,
  squareCorners,
  tiltForDifference,
} from './squared-camera.ts'
import { SQUARENESS_WORDS as WORDS } from './words.ts'

const NARROWEST = 240
const PAD = 4
/** Space in pixels on both sides of the outline for the figures of its edges. */
const SIDE = 24
const ROW = 20
/** The largest drawn displacement of a corner, as a fraction of the shorter side. */
const FARTHEST = 0.11
const TALLEST = 1.1

const EDGES = ['upper', 'right', 'lower', 'left'] as const
type Edge = (typeof EDGES)[number]

/** The usable inputs of the drawing. */
interface Squareness {
  readonly frame: SquareFrame
  readonly cameraTilt: CameraTilt
  readonly allowedPixels: number | undefined
  readonly omissions: readonly string[]
}

const figureOf = (value: number): string => {
  const size = Math.abs(value)
  return showFigure(Number(size < 100 ? value.toFixed(size < 1 ? 2 : 1) : value.toFixed(0)))
}
/** Pixels with their unit. */
const px = (value: number): string => WORDS.pixels(figureOf(value))

const signedPx = (value: number): string => {
  const shown = figureOf(value)
  return WORDS.pixels(Number(shown.replace('−', '-')) === 0 ? '0' : value > 0 ? `+${shown}` : shown)
}
const degrees = (angle: number): string => `${showFigure(Number(((Math.abs(angle) * 180) / Math.PI).toPrecision(3)))}°`

function readSquareness(inputs: DrawingInputs): Squareness | string {
  const above = (name: string): number | undefined => {
    const value = numberIn(inputs[name])
    return value !== undefined && value > 1e-9 && value < 1e9 ? value : undefined
  }
  const angle = (name: string): number | undefined => {
    const value = inputs[name] === undefined ? 0 : numberIn(inputs[name])
    return value !== undefined && Math.abs(value) < 1.5 ? value : undefined
  }
  const pixelsWidth = above('pixels_width')
  const pixelsHeight = above('pixels_height')
  const distance = above('entrance_distance')
  if (pixelsWidth === undefined || pixelsHeight === undefined) return WORDS.pixelsUnknown
  if (distance === undefined) return WORDS.distanceUnknown
  const height = above('field_height')
  const width = above('field_width')
  // Pixels are square, so one side of the field gives the other.
  const fieldHeight = height ?? (width === undefined ? undefined : (width * pixelsHeight) / pixelsWidth)
  const fieldWidth = width ?? (fieldHeight === undefined ? undefined : (fieldHeight * pixelsWidth) / pixelsHeight)
  if (fieldHeight === undefined || fieldWidth === undefined) return WORDS.fieldUnknown
  if (Math.max(pixelsWidth / pixelsHeight, pixelsHeight / pixelsWidth) > 20) return WORDS.frameTooNarrow
  const tilt = angle('tilt')
  const tiltAcross = angle('tilt_across')
  if (inputs.tilt === undefined && inputs.tilt_across === undefined) return WORDS.tiltUnknown
  if (tilt === undefined || tiltAcross === undefined) return WORDS.tiltTooLarge
  const allowedPixels = above('allowed_pixels')
  const omissions = inputs.allowed_pixels !== undefined && allowedPixels === undefined ? [WORDS.allowedNotPositive] : []
  return {
    frame: { fieldWidth, fieldHeight, distance, pixelsWidth, pixelsHeight },
    cameraTilt: { tilt, tiltAcross },
    allowedPixels,
    omissions,
  }
}

/** The largest of 1, 2, 5, 10 … by which a displacement in pixels can be exaggerated within a space in pixels. */
function exaggeration(largest: number, room: number): number {
  if (!(largest * 2 <= room)) return 1
  const most = Math.min(room / Math.max(largest, 1e-9), 1e6)
  const decade = 10 ** Math.floor(Math.log10(most))
  return ([5, 2, 1].find((step) => step * decade <= most) ?? 1) * decade
}

/** Draws the outline of the field in the frame of a tilted camera, with the displacement of each corner and edge and what is allowed. */
export const drawSquareness: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.squareness
  const read = readSquareness(inputs)
  if (typeof read === 'string') return nothingDrawn(width, title, [], read)
  const { frame, cameraTilt, allowedPixels } = read
  const omissions = [...read.omissions]
  const square = squareCorners(frame)
  const seen = projectedCorners(frame, cameraTilt)
  if (!seen) return nothingDrawn(width, title, [WORDS.besideLens], '')
  const limit = allowedPixels === undefined ? undefined : tiltForDifference(frame, cameraTilt, allowedPixels)
  const allowed = limit && projectedCorners(frame, limit)
  if (allowedPixels !== undefined && !allowed) omissions.push(WORDS.allowedNotReached)

  const off = (corners: readonly Place[]): readonly number[] =>
    corners.map((one, at) => Math.hypot(one.x - (square[at] as Place).x, one.y - (square[at] as Place).y))
  const side = Math.min(frame.pixelsWidth, frame.pixelsHeight)
  // The exaggeration serves both outlines: the actual and the allowed one.
  const times = exaggeration(Math.max(...off(seen), ...(allowed ? off(allowed) : [])), side * FARTHEST)
  const drawnAt = (corners: readonly Place[]): readonly Place[] =>
    corners.map((one, at) => {
      const { x, y } = square[at] as Place
      return { x: x + (one.x - x) * times, y: y + (one.y - y) * times }
    })
  const shapes = { square, seen: drawnAt(seen), allowed: allowed && drawnAt(allowed) }
  const extent = boxAround(
    [...shapes.square, ...shapes.seen, ...(shapes.allowed ?? [])].map(({ x, y }) => point(x, -y)),
  )

  const key: readonly KeyEntry[] = [
    { stroke: 'thick', text: WORDS.asTilted },
    ...(allowed ? [{ stroke: 'dashed' as const, text: WORDS.asAllowed(px(allowedPixels as number)) }] : []),
    { stroke: 'dotted', text: WORDS.square },
  ]
  const room = { across: width - 2 * (PAD + SIDE), down: width * TALLEST }
  const scale = Math.min(room.across / (extent.right - extent.left), room.down / (extent.bottom - extent.top))
  const top = PAD + ROW + ROW
  const origin = point(width / 2 - ((extent.left + extent.right) / 2) * scale, top - extent.top * scale)
  const at = ({ x, y }: Place): Point => point(origin.x + x * scale, origin.y - y * scale)
  const outline = grownBox(extent, origin, scale)
  const keyTop = outline.bottom + ROW + ROW
  const height = keyTop + keyHeight(key, width - 2 * PAD) + PAD

  const canvas = new Canvas(width)
  const whole: Box = { left: 0, right: width, top: 0, bottom: height }
  const differ = edgeDifference(frame, seen)
  const verdict =
    allowedPixels === undefined ? WORDS.differ(px(differ)) : WORDS.differAllowed(px(differ), figureOf(allowedPixels))
  canvas.outline('dotted', 'square', shapes.square.map(at))
  if (shapes.allowed) canvas.outline('dashed', 'allowed', shapes.allowed.map(at))
  canvas.outline('thick', 'seen', shapes.seen.map(at))
  const drawn = WORDS.exaggerated(showFigure(times))
  canvas.placeText('view-title', line(drawn, point(PAD, PAD + ASCENT + 2), 'start'), whole)
  letterEdges()
  letterCorners()
  const middle = point((outline.left + outline.right) / 2, (outline.top + outline.bottom) / 2)
  const rows = verdictRows(verdict, (outline.right - outline.left) * 0.62)
  rows.forEach((text, row) => {
    const y = middle.y + (row - (rows.length - 1) / 2) * ROW + ASCENT / 2
    canvas.placeText('verdict', line(text, point(middle.x, y), 'middle'), whole)
  })
  drawKey(canvas, key, PAD, keyTop, width - 2 * PAD)

  function letterEdges(): void {
    const lengths = edgeLengths(seen as readonly Place[])
    const usual = edgeLengths(square)
    EDGES.forEach((name, edge) => {
      const figure = signedPx((lengths[edge] as number) - (usual[edge] as number))
      const far = farness(name, cameraTilt)
      const texts = [WORDS.edge(far ?? (WORDS.edges[edge] as string), figure), figure]
      const places = texts.flatMap((text): readonly TextPlacement[] => {
        if (name === 'upper') return line(text, point(middleX(), outline.top - DESCENT - 3), 'middle')
        if (name === 'lower') return line(text, point(middleX(), outline.bottom + ASCENT + 4), 'middle')
        const x = name === 'left' ? outline.left - DESCENT - 5 : outline.right + ASCENT + 5
        return line(text, point(x, (outline.top + outline.bottom) / 2), 'middle', true)
      })
      canvas.placeText(`edge-${name}`, places, whole)
    })
  }

  function middleX(): number {
    return (outline.left + outline.right) / 2
  }

  /** Writes the displacement of each corner inside the outline beside it. */
  function letterCorners(): void {
    off(seen as readonly Place[]).forEach((far, corner) => {
      const text = px(far)
      const [right, up] = [Math.sign((square[corner] as Place).x), Math.sign((square[corner] as Place).y)]
      const from = at(square[corner] as Place)
      const places = [6, 10, 15, 21, 28, 36, 45, 56].flatMap((inwards) =>
        [inwards, 6, 12, 20, 30].map((sideways) => ({
          lettering: {
            text,
            at: point(from.x - right * sideways, from.y + (up > 0 ? inwards + ASCENT : -inwards - DESCENT)),
            anchor: right > 0 ? ('end' as const) : ('start' as const),
          },
        })),
      )
      canvas.placeText('corner', places, whole)
    })
  }

  const description = describe({ frame, cameraTilt, seen, square, differ, allowedPixels, times, limit, off: off(seen) })
  return { node: canvas.node(height, title, description), title, description, omissions, width, height }
}

const grownBox = (extent: Box, origin: Point, scale: number): Box => ({
  left: origin.x + extent.left * scale,
  right: origin.x + extent.right * scale,
  top: origin.y + extent.top * scale,
  bottom: origin.y + extent.bottom * scale,
})

const line = (
  text: string,
  at: Point,
  anchor: 'start' | 'middle' | 'end',
  upright = false,
): readonly TextPlacement[] => [{ lettering: { text, at, anchor, upright } }]

const verdictRows = (text: string, width: number): readonly string[] =>
  textWidth(text) <= width
    ? [text]
    : text.split(WORDS.separator).map((one, at, all) => (at < all.length - 1 ? `${one},` : one))

/** The label of an edge that is the far or the near one of its pair; undefined if they are equally far. */
function farness(edge: Edge, { tilt, tiltAcross }: CameraTilt): string | undefined {
  const along = edge === 'upper' ? tilt : edge === 'lower' ? -tilt : edge === 'right' ? tiltAcross : -tiltAcross
  return Math.abs(along) < 1e-12 ? undefined : along > 0 ? WORDS.far : WORDS.near
}

function describe(what: {
  frame: SquareFrame
  cameraTilt: CameraTilt
  seen: readonly Place[]
  square: readonly Place[]
  differ: number
  allowedPixels: number | undefined
  times: number
  limit: CameraTilt | undefined
  off: readonly number[]
}): string {
  const { frame, cameraTilt, seen, square, differ, allowedPixels, times, limit, off } = what
  const tilts = [
    ...(cameraTilt.tilt !== 0 || cameraTilt.tiltAcross === 0 ? [WORDS.alongHeight(degrees(cameraTilt.tilt))] : []),
    ...(cameraTilt.tiltAcross !== 0 ? [WORDS.alongWidth(degrees(cameraTilt.tiltAcross))] : []),
  ]
  const usual = edgeLengths(square)
  const edges = edgeLengths(seen).map((length, edge) => {
    const far = farness(EDGES[edge] as Edge, cameraTilt)
    return WORDS.edgeShift(WORDS.edges[edge] as string, far, signedPx(length - (usual[edge] as number)))
  })
  const corners = WORDS.corners.map((name, at) => WORDS.cornerShift(name, px(off[at] as number)))
  const limitAngle = limit && degrees(Math.hypot(limit.tilt, limit.tiltAcross))
  return [
    WORDS.introduction(listText(tilts), SHARED.times(figureOf(frame.pixelsWidth), figureOf(frame.pixelsHeight))),
    WORDS.edgeShifts(edges.join(', ')),
    WORDS.cornerShifts(corners.join(', ')),
    allowedPixels === undefined
      ? WORDS.difference(px(differ))
      : WORDS.differenceAllowed(px(differ), px(allowedPixels), limitAngle),
    WORDS.exaggeration(showFigure(times)),
  ].join(' ')
}
