import { showFigure } from '../../units/index.ts'
import { Canvas, type TextPlacement } from '../canvas/canvas.ts'
import type { Draw, DrawingInputs } from '../canvas/drawing-options.ts'
import { type Box, boxAround, type Point, point } from '../canvas/geometry.ts'
import { ASCENT, DESCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
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

const NARROWEST = 240
const PAD = 4
/** At either side of the outline, for the figure of its edge. */
const SIDE = 24
const ROW = 20
/** The farthest any corner is drawn from its place, as a share of the shorter side. */
const FARTHEST = 0.11
const TALLEST = 1.1

const EDGES = ['upper', 'right', 'lower', 'left'] as const

/** A frame as far as it can be drawn. */
interface Squareness {
  readonly frame: SquareFrame
  readonly cameraTilt: CameraTilt
  readonly allowedPixels: number | undefined
  readonly omissions: readonly string[]
}

const px = (value: number): string => {
  const size = Math.abs(value)
  return showFigure(Number(size < 100 ? value.toFixed(size < 1 ? 2 : 1) : value.toFixed(0)))
}
const signed = (value: number): string => {
  const shown = px(value)
  return Number(shown.replace('−', '-')) === 0 ? '0' : value > 0 ? `+${shown}` : shown
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
  if (pixelsWidth === undefined || pixelsHeight === undefined) return 'the pixels of the frame are not known.'
  if (distance === undefined) return 'the distance of the entrance pupil is not known.'
  const height = above('field_height')
  const width = above('field_width')
  // Pixels are square: one side of the field gives the other.
  const fieldHeight = height ?? (width === undefined ? undefined : (width * pixelsHeight) / pixelsWidth)
  const fieldWidth = width ?? (fieldHeight === undefined ? undefined : (fieldHeight * pixelsWidth) / pixelsHeight)
  if (fieldHeight === undefined || fieldWidth === undefined) return 'no side of the field is known.'
  if (Math.max(pixelsWidth / pixelsHeight, pixelsHeight / pixelsWidth) > 20) return 'the frame is but a strip.'
  const tilt = angle('tilt')
  const tiltAcross = angle('tilt_across')
  if (inputs.tilt === undefined && inputs.tilt_across === undefined) return 'the tilt is not known.'
  if (tilt === undefined || tiltAcross === undefined) return 'the tilt is no angle below a right one.'
  const allowedPixels = above('allowed_pixels')
  const omissions =
    inputs.allowed_pixels !== undefined && allowedPixels === undefined
      ? ['What is allowed is not drawn: it is not a number of pixels above zero.']
      : []
  return {
    frame: { fieldWidth, fieldHeight, distance, pixelsWidth, pixelsHeight },
    cameraTilt: { tilt, tiltAcross },
    allowedPixels,
    omissions,
  }
}

/** The largest of 1, 2, 5, 10 … by which a displacement may be drawn larger than it is. */
function exaggeration(largest: number, room: number): number {
  if (!(largest * 2 <= room)) return 1
  const most = Math.min(room / Math.max(largest, 1e-9), 1e6)
  const decade = 10 ** Math.floor(Math.log10(most))
  return ([5, 2, 1].find((step) => step * decade <= most) ?? 1) * decade
}

/** The field's outline in the frame of a camera that leans, how far each corner and edge is out, and what is allowed. */
export const drawSquareness: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? 'The frame, out of square'
  const read = readSquareness(inputs)
  if (typeof read === 'string') return nothingDrawn(width, title, [], read)
  const { frame, cameraTilt, allowedPixels } = read
  const omissions = [...read.omissions]
  const square = squareCorners(frame)
  const seen = projectedCorners(frame, cameraTilt)
  if (!seen)
    return nothingDrawn(
      width,
      title,
      ['The outline is not drawn: at this tilt part of the field is beside the lens.'],
      '',
    )
  const limit = allowedPixels === undefined ? undefined : tiltForDifference(frame, cameraTilt, allowedPixels)
  const allowed = limit && projectedCorners(frame, limit)
  if (allowedPixels !== undefined && !allowed)
    omissions.push('What is allowed is not drawn: no tilt puts the edges out by so much.')

  const off = (corners: readonly Place[]): readonly number[] =>
    corners.map((one, at) => Math.hypot(one.x - (square[at] as Place).x, one.y - (square[at] as Place).y))
  const side = Math.min(frame.pixelsWidth, frame.pixelsHeight)
  // Where what is allowed is far more than what is there, or far less, each keeps some room.
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
    { stroke: 'thick', text: 'as the camera leans' },
    ...(allowed ? [{ stroke: 'dashed' as const, text: `out by ${px(allowedPixels as number)} px, as allowed` }] : []),
    { stroke: 'dotted', text: 'square' },
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
  const verdict = `edges differ by ${px(differ)} px${allowedPixels === undefined ? '' : `, ${px(allowedPixels)} allowed`}`
  canvas.outline('dotted', 'square', shapes.square.map(at))
  if (shapes.allowed) canvas.outline('dashed', 'allowed', shapes.allowed.map(at))
  canvas.outline('thick', 'seen', shapes.seen.map(at))
  const drawn = `shifts drawn ${showFigure(times)} times as large`
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
      const figure = `${signed((lengths[edge] as number) - (usual[edge] as number))} px`
      const far = farness(name, cameraTilt)
      const texts = far ? [`${far} edge ${figure}`, figure] : [`${name} edge ${figure}`, figure]
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

  /** Each corner's own distance from where it belongs, beside it on the inside. */
  function letterCorners(): void {
    off(seen as readonly Place[]).forEach((far, corner) => {
      const text = `${px(far)} px`
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
  textWidth(text) <= width ? [text] : text.split(', ').map((one, at, all) => (at < all.length - 1 ? `${one},` : one))

/** Whether an edge is the far or the near one of its pair. */
function farness(edge: (typeof EDGES)[number], { tilt, tiltAcross }: CameraTilt): 'far' | 'near' | undefined {
  const along = edge === 'upper' ? tilt : edge === 'lower' ? -tilt : edge === 'right' ? tiltAcross : -tiltAcross
  return Math.abs(along) < 1e-12 ? undefined : along > 0 ? 'far' : 'near'
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
    ...(cameraTilt.tilt !== 0 || cameraTilt.tiltAcross === 0
      ? [`${degrees(cameraTilt.tilt)} along the height of the frame`]
      : []),
    ...(cameraTilt.tiltAcross !== 0 ? [`${degrees(cameraTilt.tiltAcross)} along its width`] : []),
  ]
  const usual = edgeLengths(square)
  const edges = edgeLengths(seen).map((length, edge) => {
    const name = EDGES[edge] as (typeof EDGES)[number]
    const far = farness(name, cameraTilt)
    return `${name} edge${far ? ` (${far})` : ''} ${signed(length - (usual[edge] as number))} px`
  })
  const corners = ['upper left', 'upper right', 'lower right', 'lower left'].map(
    (name, at) => `${name} ${px(off[at] as number)} px`,
  )
  return [
    `The outline of a field square to the camera, as a camera sees it that leans by ${tilts.join(' and ')}, in a frame of ${px(frame.pixelsWidth)} × ${px(frame.pixelsHeight)} px.`,
    `Against the square one: ${edges.join(', ')}.`,
    `The corners are off their places: ${corners.join(', ')}.`,
    `Opposite edges differ by ${px(differ)} px over the frame${allowedPixels === undefined ? '.' : `; ${px(allowedPixels)} px is allowed${limit ? `, reached at ${degrees(Math.hypot(limit.tilt, limit.tiltAcross))}` : ''}.`}`,
    `The shifts are drawn ${showFigure(times)} times as large as they are.`,
  ].join(' ')
}
