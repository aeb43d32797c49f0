import { Canvas } from '../canvas/canvas.ts'
import { LANE } from '../canvas/dimension-line.ts'
import type { DrawingOptions } from '../canvas/drawing-options.ts'
import { lengthIn, lengthUnit } from '../canvas/drawing-unit.ts'
import { type Box, point } from '../canvas/geometry.ts'
import { textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { fitScale, type Scale } from '../canvas/scale.ts'
import type { Drawing } from '../canvas/tree.ts'
import { TITLES } from '../canvas/words.ts'
import { contradictionsOf } from './contradictions.ts'
import { describeSetUp } from './describe-set-up.ts'
import { belowElevation, drawElevation } from './elevation.ts'
import type { Frame } from './frame.ts'
import { frontHandles, lampHandles, planHandles } from './handles.ts'
import { lampOffsets, offsetLanes } from './lamp-choice.ts'
import { drawPlan, notesHeight, planNotes } from './plan.ts'
import { isEmpty, readSetUp, type SetUp, type SetUpInputs } from './set-up-inputs.ts'
import { uprightDimensions } from './upright-dimensions.ts'
import { drawBar, PAD, TITLE_ROW, viewTitle } from './view-furniture.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

/** Half the outline of a lamp in pixels; it has a minimum size that does not depend on the scale. */
const LAMP_ROOM = 15
/** Space in pixels above the highest part, into which the axis and the column extend. */
const HEAD_ROOM = 24
/** The largest height of both views together, as a multiple of the width. */
const TALLEST = 1.7
const NARROWEST = 240

interface Extent {
  readonly left: number
  readonly right: number
  readonly top: number
  /** Extent in the plan, towards and away from the viewer. */
  readonly near: number
  readonly far: number
}

function boardOf(setUp: SetUp): { halfWidth: number; halfDepth: number } {
  const width = Math.max(setUp.originalWidth ?? 0, setUp.fieldWidth ?? 0)
  const height = Math.max(setUp.originalHeight ?? 0, setUp.fieldHeight ?? 0)
  // The size of the board is not an input; it is drawn somewhat larger than what lies on it.
  const tallest = Math.max(setUp.sensor ?? 0, setUp.lens ?? 0, setUp.apex ?? 0)
  const halfWidth = Math.max(0.62 * width, 0.22 * tallest, 0.05)
  return { halfWidth, halfDepth: Math.max(0.62 * height, 0.72 * halfWidth) }
}

function extentOf(setUp: SetUp, board: { halfWidth: number; halfDepth: number }): Extent {
  const xs = [board.halfWidth, -board.halfWidth, ...setUp.lamps.flatMap((lamp) => [lamp.x, lamp.aim_x])]
  const mirror = setUp.mirror?.atHeight ?? 0
  const tip = setUp.clear ?? setUp.lens ?? setUp.apex
  // A camera body extends slightly above its sensor, and a lens without a body above its rim.
  const camera = [setUp.sensor === undefined ? 0 : setUp.sensor + 0.03, tip === undefined ? 0 : tip + 0.06]
  const heights = [...camera, setUp.sensor, setUp.lens, setUp.apex, setUp.clear, setUp.column]
  const ys = [board.halfDepth, -board.halfDepth, ...setUp.lamps.flatMap((lamp) => [lamp.y, lamp.aim_y])]
  return {
    left: Math.min(...xs, -mirror),
    right: Math.max(...xs, mirror),
    top: Math.max(
      0.02,
      setUp.mirror?.height ?? 0,
      ...heights.map((one) => one ?? 0),
      ...setUp.lamps.map((lamp) => lamp.z),
    ),
    near: Math.min(...ys),
    far: Math.max(...ys, board.halfDepth + (setUp.column === undefined ? 0 : 0.06)),
  }
}

/** Draws a copy stand to scale: elevation above plan, on one centre line. */
export function drawSetUp(inputs: SetUpInputs, options: DrawingOptions): Drawing {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const unit = lengthUnit(options.unit)
  const show = lengthIn(unit)
  const title = options.title ?? TITLES['set-up']
  const setUp = readSetUp(inputs, show)
  if (isEmpty(setUp)) return nothingDrawn(width, title, setUp.omissions, WORDS.nothingKnown)

  const board = boardOf(setUp)
  const layout = reusedLayout(options) ?? layOut(setUp, extentOf(setUp, board), width, options.zoom ?? 1, show)
  const { originX, scale, leftRoom, rightRoom, elevationY, elevationEnd, planTop, planY, planEnd, height } = layout
  const canvas = new Canvas(width)

  const view = (top: number, bottom: number): Box => ({ left: PAD, right: width - PAD, top, bottom })
  const frame = (y: number, box: Box): Frame => ({
    origin: point(originX, y),
    pxPerMetre: scale.pxPerMetre,
    view: box,
    inner: { left: leftRoom - LAMP_ROOM, right: width - rightRoom + LAMP_ROOM },
    board,
    show,
  })
  viewTitle(canvas, WORDS.elevation(scale.name), PAD)
  viewTitle(canvas, WORDS.plan(scale.name), planTop)
  const inElevation = frame(elevationY, view(PAD + TITLE_ROW, elevationEnd))
  const inPlan = frame(planY, view(planTop + TITLE_ROW, planEnd))
  const uprights = uprightDimensions(setUp, layout.withSensor)
  const elevation = drawElevation(canvas, setUp, inElevation, uprights)
  const plan = drawPlan(canvas, setUp, inPlan)
  elevation.letter()
  plan.letter()
  elevation.hatch()
  drawBar(canvas, scale, unit, height - 10, show)

  const description = describeSetUp(setUp, show, scale.name)
  const handles = [
    ...lampHandles(setUp.lamps, frontHandles(inElevation)),
    ...lampHandles(setUp.lamps, planHandles(inPlan)),
  ]
  const node = canvas.node(height, title, description)
  const cautions = contradictionsOf(setUp, show)
  const drawing = { node, title, description, omissions: setUp.omissions, cautions, width, height, handles }
  layouts.set(drawing, layout)
  return drawing
}

/** Scale and positions of the views. They are reused while a lamp is dragged, so that the drawing does not move under the pointer. */
type Layout = ReturnType<typeof layOut>

const layouts = new WeakMap<Drawing, Layout>()

const reusedLayout = ({ layoutFrom, width }: DrawingOptions): Layout | undefined =>
  layoutFrom && Math.abs(layoutFrom.width - width) < 1 ? layouts.get(layoutFrom) : undefined

/** The space in pixels that the figure of a short distance needs above its dimension line in the plan. */
function roomAbove(setUp: SetUp, show: (metres: number) => string, px: (metres: number) => number): number {
  const short = lampOffsets(setUp.lamps).up.some((lamp) => px(lamp.y) < textWidth(show(lamp.y)) + 10)
  return short ? 34 : 0
}

/** Computes the space for dimensions at both sides, the scale that fits the rest, and the positions of the views. */
function layOut(setUp: SetUp, extent: Extent, width: number, zoom: number, show: (metres: number) => string) {
  const { withSensor, leftRoom, rightRoom, scale } = sideRooms(setUp, extent, width, zoom)
  const px = (metres: number): number => metres * scale.pxPerMetre
  // The remaining space is divided evenly, so that the drawing is centred.
  const spare = width - leftRoom - rightRoom - px(extent.right - extent.left)
  const originX = leftRoom + spare / 2 - px(extent.left)

  const elevationY = PAD + TITLE_ROW + px(extent.top) + HEAD_ROOM
  const elevationEnd = elevationY + belowElevation(setUp.lamps, px(setUp.thickness))
  const planTop = elevationEnd + 6
  const planY =
    planTop + TITLE_ROW + roomAbove(setUp, show, px) + (setUp.lamps.length > 0 ? LAMP_ROOM : 4) + px(extent.far)
  const planEnd = Math.max(
    planY + px(-extent.near) + (setUp.lamps.length > 0 ? LAMP_ROOM : 8) + notesHeight(planNotes(setUp, show)),
    ...lampOffsets(setUp.lamps).down.map((lamp) => planY + px(-lamp.y) + textWidth(show(-lamp.y)) + 16),
  )
  const height = planEnd + 26
  return { withSensor, leftRoom, rightRoom, scale, originX, elevationY, elevationEnd, planTop, planY, planEnd, height }
}

function sideRooms(setUp: SetUp, extent: Extent, width: number, zoom: number) {
  const room = setUp.lamps.length > 0 ? LAMP_ROOM : 4
  const lanes = (count: number) => (count > 0 ? count * LANE + 2 : 0)
  const tried = (withSensor: boolean) => {
    const uprights = uprightDimensions(setUp, withSensor)
    const leftRoom = PAD + room + lanes(uprights.left.length)
    const rightRoom = PAD + room + lanes(Math.max(uprights.right.length, offsetLanes(setUp.lamps)))
    return { withSensor, leftRoom, rightRoom, scale: scaleFor(extent, width, width - leftRoom - rightRoom, zoom) }
  }
  const whole = tried(true)
  if (setUp.column === undefined) return whole
  // The height on the column already places the camera; in a narrow space a larger drawing is worth more than both dimensions.
  const shorter = tried(false)
  return shorter.scale.ratio < whole.scale.ratio ? shorter : whole
}

function scaleFor(extent: Extent, width: number, across: number, zoom: number): Scale {
  const drawn = extent.right - extent.left
  // A taller drawing would not show elevation and plan on one screen.
  const height = extent.top + extent.far - extent.near
  return fitScale({ width: drawn, height }, { width: across, height: width * TALLEST }, zoom)
}
