import type { Canvas } from '../canvas/canvas.ts'
import { type Dimension, drawDimension, figures, LANE, letterDimension } from '../canvas/dimension-line.ts'
import {
  type Box,
  between,
  corners,
  distance,
  type Point,
  point,
  type Segment,
  shareWithin,
  towards,
} from '../canvas/geometry.ts'
import { hatch } from '../canvas/hatch.ts'
import { arrowhead, lampOutline } from '../canvas/lamp-outline.ts'
import { textWidth } from '../canvas/lettering.ts'
import { drawCamera } from './camera-outline.ts'
import type { DeferredLettering, Frame } from './frame.ts'
import { aroundArc, zonePlaces } from './label-places.ts'
import { lampDistances, lampHeights, lampsSeen } from './lamp-choice.ts'
import type { Lamp, SetUp } from './set-up-inputs.ts'
import type { Upright, Uprights } from './upright-dimensions.ts'
import { TITLE_ROW } from './view-furniture.ts'

const BOARD_DEPTH = 6
const COLUMN_HALF_WIDTH = 0.03

/** The extent of the elevation below the face of the original, in pixels. */
export function belowElevation(lamps: readonly Lamp[], thicknessPx: number): number {
  const { left, right } = lampDistances(lamps)
  const lanes = Math.max(left.length, right.length)
  return thicknessPx + BOARD_DEPTH + (lanes === 0 ? 6 : 6 + lanes * LANE + 4)
}

/** Draws the set-up from the front. The returned functions place the texts and the hatching after all lines are drawn. */
export function drawElevation(
  canvas: Canvas,
  setUp: SetUp,
  frame: Frame,
  uprights: Uprights,
): { letter: DeferredLettering; hatch: DeferredLettering } {
  const { origin, pxPerMetre, view, board, show } = frame
  const at = (x: number, z: number): Point => point(origin.x + x * pxPerMetre, origin.y - z * pxPerMetre)
  const px = (metres: number): number => metres * pxPerMetre
  const lamps = lampsSeen(setUp.lamps, 'y')
  // Texts, but not lines, may use the row of the title.
  const lettered = { ...view, top: view.top - TITLE_ROW }
  const boardTop = origin.y + px(setUp.thickness)

  drawBoard()
  const camera = drawCamera(canvas, setUp, { x: origin.x, y: (height) => at(0, height).y, pxPerMetre })
  drawColumn()
  const zone = drawMirrorZone()
  drawField()
  for (const lamp of lamps) drawLamp(lamp)
  const forty = draw45()
  const dimensions = [...drawUprights(), ...drawLampHeights(), ...drawLampDistances()]
  drawDatum()
  drawAxis()

  function drawBoard(): void {
    const [left, right] = [at(-board.halfWidth, 0).x, at(board.halfWidth, 0).x]
    canvas.body('thick', 'board', corners({ left, right, top: boardTop, bottom: boardTop + BOARD_DEPTH }))
    if (setUp.originalWidth === undefined) return
    const half = px(setUp.originalWidth) / 2
    // A sheet of paper is too thin for the scale and is drawn as a line on the board.
    const top = Math.min(origin.y, boardTop - 2.5)
    const box = { left: origin.x - half, right: origin.x + half, top, bottom: boardTop }
    canvas.body('thick', 'original', corners(box), { filled: px(setUp.thickness) < 2.5 })
  }

  function drawColumn(): void {
    if (setUp.column === undefined) return
    const half = Math.max(px(COLUMN_HALF_WIDTH), 3.5)
    const mark = at(0, setUp.column - setUp.thickness).y
    const top = Math.min(mark, camera.top) - 8
    const upright = (x: number): readonly Segment[] => canvas.around({ from: point(x, boardTop), to: point(x, top) }, 0)
    canvas.lines('thin', 'column', [
      ...upright(origin.x - half),
      ...upright(origin.x + half),
      { from: point(origin.x - half, top), to: point(origin.x + half, top) },
    ])
    canvas.lines(
      'thick',
      'column-mark',
      canvas.around({ from: point(origin.x - half - 3, mark), to: point(origin.x + half + 3, mark) }, 0),
    )
  }

  function drawMirrorZone(): readonly Point[] | undefined {
    if (!setUp.mirror) return undefined
    const { atOriginal, atHeight, height } = setUp.mirror
    const shape = [at(-atOriginal, 0), at(atOriginal, 0), at(atHeight, height), at(-atHeight, height)]
    canvas.lines('thin', 'mirror-zone', [
      { from: shape[1] as Point, to: shape[2] as Point },
      { from: shape[0] as Point, to: shape[3] as Point },
    ])
    return shape
  }

  function drawField(): void {
    if (setUp.fieldWidth === undefined || setUp.apex === undefined) return
    const half = setUp.fieldWidth / 2
    canvas.lines('dashed', 'field-rays', [
      { from: at(0, setUp.apex), to: at(-half, 0) },
      { from: at(0, setUp.apex), to: at(half, 0) },
    ])
  }

  function drawLamp(lamp: Lamp): void {
    const from = at(lamp.x, lamp.z)
    const aim = at(lamp.aim_x, 0)
    canvas.body('thick', `lamp lamp-${lamp.number}`, lampOutline(from, aim, pxPerMetre))
    canvas.line('dashed', `aim aim-${lamp.number}`, from, aim)
    canvas.lines('thin', `aim-arrow aim-${lamp.number}`, arrowhead(from, aim))
    if (lamp.beam === undefined) return
    // The figure of the height below the lamp needs its space first.
    const room = px(lamp.z) - textWidth(show(lamp.z)) - 10
    if (room < 16) return
    const reach = Math.min((view.right - view.left) * 0.09, distance(from, aim) * 0.4, room)
    const angle = Math.atan2(from.y - aim.y, aim.x - from.x)
    const above: Box = { ...view, bottom: origin.y }
    const edges = [-1, 1].flatMap((side): readonly Segment[] => {
      const edge = { from, to: towards(from, angle + (side * (lamp.beam as number)) / 2, reach) }
      const share = shareWithin(edge, corners(above))
      return share ? [{ from: between(edge.from, edge.to, share[0]), to: between(edge.from, edge.to, share[1]) }] : []
    })
    canvas.lines('dotted', `beam beam-${lamp.number}`, edges)
    const arc = Array.from({ length: 17 }, (_, step) =>
      towards(from, angle + (lamp.beam as number) * (step / 16 - 0.5), reach * 0.75),
    ).filter((one) => one.y <= origin.y && one.x > view.left && one.x < view.right && one.y > view.top)
    if (arc.length > 1) canvas.arc('dotted', `beam beam-${lamp.number}`, arc)
  }

  function draw45(): { readonly radius: number } | undefined {
    if (lamps.length === 0) return undefined
    const reach = Math.min(
      Math.max(...lamps.map((lamp) => Math.max(lamp.z, Math.abs(lamp.x)))) * pxPerMetre + 6,
      frame.inner.right - origin.x,
      origin.y - view.top,
    )
    const radius = Math.min(reach / Math.SQRT2 / 1.6, Math.max(px(setUp.originalWidth ?? 0) / 2 + 14, 34))
    const end = point(origin.x + reach, origin.y - reach)
    // A lamp aimed along the 45° line already draws it.
    const drawn = lamps.some(
      (lamp) => Math.abs(lamp.aim_x) < 1e-3 && lamp.x > 0 && Math.abs(Math.atan2(lamp.z, lamp.x) - Math.PI / 4) < 0.035,
    )
    if (!drawn) canvas.lines('chain', 'line-45', canvas.around({ from: origin, to: end }, 1))
    canvas.arc(
      'thin',
      'arc-45',
      Array.from({ length: 13 }, (_, step) => towards(origin, ((step / 12) * Math.PI) / 4, radius)),
    )
    return { radius }
  }

  function drawUprights(): readonly Dimension[] {
    const { left, right } = uprights
    const lane =
      (side: -1 | 1) =>
      (upright: Upright, index: number): Dimension => {
        const shown = show(upright.to - upright.from)
        const edge = side < 0 ? view.left : view.right
        const count = side < 0 ? left.length : right.length
        const x = edge - side * ((count - 1 - index) * LANE + (side < 0 ? 16 : 5))
        const feature = point(origin.x + side * (upright.half ?? camera.half(upright.to)), at(0, upright.to).y)
        return {
          className: upright.className,
          direction: 'upright',
          from: point(origin.x + side * px(board.halfWidth), at(0, upright.from).y),
          to: feature,
          at: x,
          wordings: [`${upright.long} ${shown}`, `${upright.short} ${shown}`, ...figures(shown)],
          // The datum line is the extension line of dimensions that start at the face of the original.
          extensions: [upright.from !== 0, true],
        }
      }
    const all = [...left.map(lane(-1)), ...right.map(lane(1))]
    for (const one of all) drawDimension(canvas, one)
    return all
  }

  function drawLampHeights(): readonly Dimension[] {
    return lampHeights(lamps).map((lamp) => {
      const lying = at(lamp.x, 0)
      const dimension: Dimension = {
        className: `dimension-height-${lamp.number}`,
        direction: 'upright',
        from: lying,
        to: at(lamp.x, lamp.z),
        at: lying.x,
        wordings: figures(show(lamp.z)),
        extensions: [false, false],
      }
      drawDimension(canvas, dimension)
      return dimension
    })
  }

  function drawLampDistances(): readonly Dimension[] {
    const { left, right } = lampDistances(lamps)
    const measured = lampHeights(lamps)
    const lane = (lamp: Lamp, index: number): Dimension => {
      const hasHeight = measured.includes(lamp)
      const dimension: Dimension = {
        className: `dimension-distance-${lamp.number}`,
        direction: 'across',
        from: point(origin.x, boardTop + BOARD_DEPTH),
        to: at(lamp.x, hasHeight ? 0 : lamp.z),
        at: boardTop + BOARD_DEPTH + 2 + (index + 1) * LANE,
        wordings: figures(show(Math.abs(lamp.x))),
        extensions: [false, true],
      }
      drawDimension(canvas, dimension)
      return dimension
    }
    return [...left.map(lane), ...right.map(lane)]
  }

  /** Draws the level of the original's face as far as the dimensions that start there. */
  function drawDatum(): void {
    const reached = dimensions
      .filter((one) => one.direction === 'upright' && one.from.y === origin.y)
      .map((one) => one.at + Math.sign(one.at - origin.x) * 4)
    const level = {
      from: point(Math.min(origin.x, ...reached), origin.y),
      to: point(Math.max(origin.x, ...reached), origin.y),
    }
    canvas.lines('dimension', 'datum', canvas.around(level))
  }

  function drawAxis(): void {
    const { left, right } = lampDistances(lamps)
    const lanes = Math.max(left.length, right.length)
    const foot = lanes === 0 ? boardTop + BOARD_DEPTH + 5 : boardTop + BOARD_DEPTH + 2 + lanes * LANE + 4
    canvas.line('chain', 'axis', point(origin.x, Math.max(view.top, camera.top - 12)), point(origin.x, foot))
  }

  function letter(): void {
    const roomy = dimensions.filter((one) => one.wordings.length > 2)
    // Either all wordings are long or all are short: a mixture would suggest different meanings.
    const full = roomy.every(
      (one) => textWidth(one.wordings[0] as string) < distance(point(0, one.from.y), point(0, one.to.y)) - 10,
    )
    for (const one of dimensions) {
      const wordings = !full && one.wordings.length > 2 ? one.wordings.slice(1) : one.wordings
      letterDimension(canvas, { ...one, wordings }, lettered)
    }
    if (forty) canvas.placeText('label-45', aroundArc(origin, forty.radius), lettered)
    if (zone) canvas.placeText('label-mirror-zone', zonePlaces(zone, origin.x), lettered)
  }

  return {
    letter,
    hatch() {
      if (!zone) return
      canvas.lines(
        'hatch',
        'mirror-zone',
        hatch(zone, { spacing: 8, angle: (Math.PI * 2) / 3, around: canvas.occupied }),
      )
    },
  }
}
