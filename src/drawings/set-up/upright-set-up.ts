import { Canvas } from '../canvas/canvas.ts'
import { LANE } from '../canvas/dimension-line.ts'
import type { DrawingOptions } from '../canvas/drawing-options.ts'
import { lengthIn, lengthUnit } from '../canvas/drawing-unit.ts'
import { type Box, point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { fitScale } from '../canvas/scale.ts'
import type { Drawing } from '../canvas/tree.ts'
import { TITLES } from '../canvas/words.ts'
import { contradictionsOf } from './contradictions.ts'
import { describeUpright } from './describe-upright.ts'
import { belowElevation, drawElevation } from './elevation.ts'
import type { Frame } from './frame.ts'
import { frontHandles, lampHandles } from './handles.ts'
import { isPair, lampsSeen } from './lamp-choice.ts'
import { numberLamps } from './lamp-numbers.ts'
import { planNotes } from './plan.ts'
import { isEmpty, readSetUp, type SetUp, type SetUpInputs } from './set-up-inputs.ts'
import { drawSide, easelHalf, frontOf, heightLanes, type SideFrame, sideHandles, sideways } from './side-view.ts'
import { UPRIGHT_WORDS } from './upright/words.ts'
import { uprightDimensions } from './upright-dimensions.ts'
import { isVertical, planeOf, readUprightPlacement, type UprightPlacement } from './upright-inputs.ts'
import { drawBar, PAD, TITLE_ROW, viewTitle } from './view-furniture.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

const NARROWEST = 240
const LAMP_ROOM = 15
const HEAD_ROOM = 20
/** The largest height of both views together, as a multiple of the width. */
const TALLEST = 1.3
const NOTE_ROW = 18

/** Extents from the centre of the original in metres: horizontal and vertical from the side, across and out in the plan. */
interface Extents {
  readonly side: Box
  readonly plan: { readonly half: number; readonly out: number; readonly board: number }
}

function extentsOf(setUp: SetUp, { lean, centre }: UprightPlacement): Extents {
  const { originalWidth, originalHeight, fieldWidth, sensor, lens, clear, apex, lamps, mirror } = setUp
  const tip = clear ?? lens ?? apex
  const camera = Math.max((sensor ?? 0) + 0.05, tip === undefined ? 0 : tip + 0.07)
  const half = Math.max(easelHalf(setUp), (originalHeight ?? 0) / 2)
  const places = [
    [half, 0],
    [-half, 0],
    [0.08, camera],
    [-0.08, camera],
    ...lamps.flatMap((lamp) => [
      [lamp.y, lamp.z],
      [lamp.aim_y, 0],
    ]),
  ].map(([y, z]) => sideways(y as number, z as number, lean))
  const board = Math.max(0.62 * Math.max(originalWidth ?? 0, fieldWidth ?? 0), 0.08)
  return {
    side: {
      left: Math.min(...places.map(({ out }) => out)),
      right: Math.max(...places.map(({ out }) => out)),
      top: Math.max(...places.map(({ up }) => up)),
      bottom: Math.min(...places.map(({ up }) => up), centre === undefined ? 0 : -centre),
    },
    plan: {
      half: Math.max(
        board,
        mirror?.atHeight ?? 0,
        ...lamps.flatMap((lamp) => [Math.abs(lamp.x), Math.abs(lamp.aim_x)]),
      ),
      out: Math.max(camera, mirror?.height ?? 0, frontOf(setUp) ?? 0, ...lamps.map((lamp) => lamp.z)),
      board,
    },
  }
}

function layOut(setUp: SetUp, placement: UprightPlacement, width: number, zoom: number, notes: number) {
  const { side, plan } = extentsOf(setUp, placement)
  const lamp = setUp.lamps.length > 0 ? LAMP_ROOM : 4
  const lanes = (count: number) => (count > 0 ? count * LANE + 2 : 0)
  const uprights = uprightDimensions(setUp, true)
  const rooms = {
    sideLeft: PAD + 12 + lanes(placement.centre === undefined ? 0 : 1),
    sideRight: PAD + lamp + lanes(heightLanes(setUp, placement)),
    planLeft: PAD + lamp + lanes(uprights.left.length),
    planRight: PAD + lamp + lanes(uprights.right.length),
  }
  const tall = { height: side.top - side.bottom + plan.out, room: width * TALLEST }
  const scales = [
    fitScale(
      { width: side.right - side.left, height: tall.height },
      { width: width - rooms.sideLeft - rooms.sideRight, height: tall.room },
      zoom,
    ),
    fitScale(
      { width: 2 * plan.half, height: tall.height },
      { width: width - rooms.planLeft - rooms.planRight, height: tall.room },
      zoom,
    ),
  ] as const
  const scale = scales[0].ratio > scales[1].ratio ? scales[0] : scales[1]
  const px = (metres: number): number => metres * scale.pxPerMetre

  const spare = width - rooms.sideLeft - rooms.sideRight - px(side.right - side.left)
  const sideX = rooms.sideLeft + spare / 2 - px(side.left)
  const planX = rooms.planLeft + (width - rooms.planLeft - rooms.planRight) / 2
  const sideY = PAD + TITLE_ROW + HEAD_ROOM + px(side.top)
  const sideEnd = sideY + px(-side.bottom) + 8 + LANE + 10
  const planTop = sideEnd + 8
  const planY = planTop + TITLE_ROW + HEAD_ROOM + px(plan.out)
  const planEnd = planY + belowElevation(setUp.lamps, 0)
  const height = planEnd + notes * NOTE_ROW + 26
  return { scale, rooms, uprights, board: plan.board, sideX, sideY, sideEnd, planX, planTop, planY, planEnd, height }
}

type Layout = ReturnType<typeof layOut>

const layouts = new WeakMap<Drawing, Layout>()

/** Draws an original on an easel or wall: the elevation from the side with the floor, and the plan below it. */
export function drawUpright(inputs: SetUpInputs, options: DrawingOptions): Drawing {
  const { title = TITLES['set-up'], layoutFrom } = options
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const unit = lengthUnit(options.unit)
  const show = lengthIn(unit)
  const read = readSetUp(inputs, show)
  if (isEmpty(read)) return nothingDrawn(width, title, read.omissions, WORDS.nothingKnown)
  const omissions = [...read.omissions]
  const placement = readUprightPlacement(inputs, omissions)
  if (read.column !== undefined) omissions.push(UPRIGHT_WORDS.noColumn)
  const setUp: SetUp = { ...read, column: undefined, thickness: 0 }
  const notes = planNotes(setUp, show)
  const reused = layoutFrom && Math.abs(layoutFrom.width - width) < 1 ? layouts.get(layoutFrom) : undefined
  const layout = reused ?? layOut(setUp, placement, width, options.zoom ?? 1, notes.length)
  const { scale, rooms, sideX, sideY, sideEnd, planX, planTop, planY, planEnd, height } = layout
  const canvas = new Canvas(width)

  const view = (top: number, bottom: number): Box => ({ left: PAD, right: width - PAD, top, bottom })
  const side: SideFrame = {
    origin: point(sideX, sideY),
    pxPerMetre: scale.pxPerMetre,
    view: view(PAD + TITLE_ROW, sideEnd),
    show,
  }
  const above: Frame = {
    origin: point(planX, planY),
    pxPerMetre: scale.pxPerMetre,
    view: view(planTop + TITLE_ROW, planEnd),
    inner: { left: rooms.planLeft - LAMP_ROOM, right: width - rooms.planRight + LAMP_ROOM },
    board: { halfWidth: layout.board, halfDepth: layout.board },
    show,
  }
  viewTitle(canvas, UPRIGHT_WORDS.elevationFromSide(scale.name), PAD)
  viewTitle(canvas, (isVertical(placement.lean) ? WORDS.plan : UPRIGHT_WORDS.planAlongAxis)(scale.name), planTop)
  const elevation = drawSide(canvas, setUp, placement, side)
  const plan = drawElevation(canvas, setUp, above, uprightDimensions(setUp, true))
  elevation.letter()
  plan.letter()
  const plane = planeOf(setUp)
  const inPlan = frontHandles(above, 'plan', (distance) => UPRIGHT_WORDS.outFrom(plane, distance))
  const seen = lampsSeen(setUp.lamps, 'y').map((lamp) => ({
    number: lamp.number,
    at: inPlan.at(lamp),
    aim: inPlan.at({ ...lamp, x: lamp.aim_x, z: 0 }),
  }))
  numberLamps(canvas, seen, isPair(setUp.lamps), above.view)
  plan.hatch()
  notes.forEach(({ className, text }, at) => {
    const place = point(PAD, planEnd + at * NOTE_ROW + ASCENT + 4)
    canvas.placeText(`note-${className}`, [{ lettering: { text, at: place, anchor: 'start' } }], view(planEnd, height))
  })
  drawBar(canvas, scale, unit, height - 10, show)

  const description = describeUpright(setUp, placement, show, scale.name)
  const handles = [
    ...lampHandles(setUp.lamps, sideHandles(side, placement, plane)),
    ...lampHandles(setUp.lamps, inPlan),
  ]
  const node = canvas.node(height, title, description)
  const cautions = contradictionsOf(setUp, show)
  const drawing = { node, title, description, omissions, cautions, width, height, handles }
  layouts.set(drawing, layout)
  return drawing
}
