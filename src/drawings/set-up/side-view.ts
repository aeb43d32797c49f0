import type { Canvas, TextPlacement } from '../canvas/canvas.ts'
import { type Dimension, drawDimension, figures, LANE, letterDimension } from '../canvas/dimension-line.ts'
import { type Box, type Point, point, type Segment } from '../canvas/geometry.ts'
import { arrowhead, lampOutline } from '../canvas/lamp-outline.ts'
import { ASCENT } from '../canvas/lettering.ts'
import type { DeferredLettering } from './frame.ts'
import type { LampView } from './handles.ts'
import { lampsSeen, sameLength } from './lamp-choice.ts'
import type { Lamp, SetUp } from './set-up-inputs.ts'
import { type Plane, UPRIGHT_WORDS } from './upright/words.ts'
import { isVertical, leanDegrees, planeOf, type UprightPlacement } from './upright-inputs.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

const BODY_HALF = 0.07
const BARREL_HALF = 0.036
const BOARD = 6
const MOST_LAMP_HEIGHTS = 2

/** The position of the view from the side on the canvas. */
export interface SideFrame {
  /** The centre of the original in pixels. */
  readonly origin: Point
  readonly pxPerMetre: number
  readonly view: Box
  readonly show: (metres: number) => string
}

/** Horizontal and vertical distances, in metres, from the centre of the original to a point given along and out from its leaning face. */
export const sideways = (y: number, z: number, lean: number): { readonly out: number; readonly up: number } => ({
  out: z * Math.cos(lean) - y * Math.sin(lean),
  up: z * Math.sin(lean) + y * Math.cos(lean),
})

/** The point of the camera to which its height and distance are measured, in metres from the original. */
export const frontOf = ({ apex, lens, clear }: SetUp): number | undefined => apex ?? lens ?? clear

/** The lamps whose heights above the floor are dimensioned. */
function heightsOf(setUp: SetUp, lean: number): readonly Lamp[] {
  const front = frontOf(setUp)
  const chosen: Lamp[] = []
  for (const lamp of setUp.lamps) {
    if (atLens(lamp, front, lean)) continue
    const known = chosen.some((one) => sameLength(sideways(one.y, one.z, lean).up, sideways(lamp.y, lamp.z, lean).up))
    if (!known && chosen.length < MOST_LAMP_HEIGHTS) chosen.push(lamp)
  }
  return chosen
}

/** Whether a lamp is level with the lens, whose dimension then gives the height of both. */
const atLens = ({ y, z }: Lamp, front: number | undefined, lean: number): boolean =>
  front !== undefined && sameLength(sideways(y, z, lean).up, sideways(0, front, lean).up)

/** The number of height dimensions on the side of the camera. */
export const heightLanes = (setUp: SetUp, { lean, centre }: UprightPlacement): number =>
  centre === undefined ? 0 : heightsOf(setUp, lean).length + (frontOf(setUp) === undefined ? 0 : 1)

/** Half the height of the easel or wall panel that carries the original, in metres. */
export const easelHalf = (setUp: SetUp): number =>
  Math.max(0.62 * Math.max(setUp.originalHeight ?? 0, setUp.fieldHeight ?? 0), 0.08)

/** The mapping for drag handles in the view from the side. */
export function sideHandles(
  { origin, pxPerMetre, show }: SideFrame,
  { lean, centre }: UprightPlacement,
  plane: Plane,
): LampView {
  return {
    view: 'elevation',
    hidden: 'x',
    pxPerMetre,
    at: ({ y, z }) => {
      const { out, up } = sideways(y, z, lean)
      return point(origin.x + out * pxPerMetre, origin.y - up * pxPerMetre)
    },
    place: (at) => {
      const [out, up] = [(at.x - origin.x) / pxPerMetre, (origin.y - at.y) / pxPerMetre]
      return { y: up * Math.cos(lean) - out * Math.sin(lean), z: out * Math.cos(lean) + up * Math.sin(lean) }
    },
    describe: ({ y, z }) =>
      centre === undefined
        ? UPRIGHT_WORDS.outFrom(plane, show(z))
        : `${UPRIGHT_WORDS.aboveFloor(show(centre + sideways(y, z, lean).up))}, ${UPRIGHT_WORDS.outFrom(plane, show(z))}`,
  }
}

/** Draws an upright set-up from the side, with the camera on the right. The returned function places the texts. */
export function drawSide(
  canvas: Canvas,
  setUp: SetUp,
  placement: UprightPlacement,
  frame: SideFrame,
): { letter: DeferredLettering } {
  const { origin, pxPerMetre, view, show } = frame
  const { lean, centre } = placement
  const at = (y: number, z: number): Point => {
    const { out, up } = sideways(y, z, lean)
    return point(origin.x + out * pxPerMetre, origin.y - up * pxPerMetre)
  }
  const px = (metres: number): number => metres * pxPerMetre
  const metres = (pixels: number): number => pixels / pxPerMetre
  const lamps = lampsSeen(setUp.lamps, 'x')
  const floor = centre === undefined ? undefined : origin.y + px(centre)
  const half = easelHalf(setUp)

  drawEasel()
  drawCamera()
  drawRays()
  for (const lamp of lamps) drawLamp(lamp)
  const dimensions = [...drawHeights(), ...drawDistance()]
  drawFloor()
  drawAxis()

  function drawEasel(): void {
    const back = -metres(BOARD)
    const foot = floor === undefined ? -half : Math.max(-half, -(centre as number) / Math.cos(lean))
    canvas.body('thick', 'board', [at(foot, 0), at(half, 0), at(half, back), at(foot, back)])
    if (setUp.originalHeight !== undefined) {
      const [edge, thick] = [setUp.originalHeight / 2, metres(2.5)]
      canvas.body('thick', 'original', [at(-edge, 0), at(edge, 0), at(edge, thick), at(-edge, thick)], { filled: true })
    }
    if (floor === undefined) return
    // A vertical original hangs on a wall; a leaning one is carried by an easel whose legs reach the floor.
    const below = at(foot, back)
    const top = at(half, back)
    const legs: Segment[] = isVertical(lean)
      ? [{ from: point(below.x, view.top + 4), to: point(below.x, floor) }]
      : [
          { from: below, to: at(-(centre as number) / Math.cos(lean), back) },
          ...(lean > 0 ? [{ from: top, to: point(top.x, floor) }] : []),
        ]
    canvas.lines(
      'thin',
      'carrier',
      legs.flatMap((one) => canvas.around(one, 0)),
    )
  }

  function drawCamera(): void {
    const { sensor, lens, clear, apex } = setUp
    const tip = clear ?? lens ?? apex
    const [body, barrel] = [Math.max(BODY_HALF, metres(11)), Math.max(BARREL_HALF, metres(6))]
    const block = (from: number, to: number, wide: number) => [
      at(-wide, from),
      at(wide, from),
      at(wide, to),
      at(-wide, to),
    ]
    const whole = sensor !== undefined && (tip === undefined || tip < sensor)
    let front = (tip ?? 0) + Math.max(0.06, metres(10))
    if (whole) {
      front =
        sensor -
        (tip === undefined ? Math.max(0.045, metres(6)) : Math.min(Math.max(0.045, metres(6)), (sensor - tip) * 0.8))
      canvas.body('thick', 'camera', block(front, sensor + Math.max(0.03, metres(5)), body))
      canvas.line('thin', 'sensor', at(-body + metres(3), sensor), at(body - metres(3), sensor))
    }
    if (tip !== undefined) canvas.body(whole ? 'thick' : 'dashed', 'lens', block(tip, front, barrel))
    if (lens !== undefined)
      canvas.line('thin', 'principal-plane', at(-barrel - metres(4), lens), at(barrel + metres(4), lens))
  }

  function drawRays(): void {
    if (setUp.fieldHeight === undefined || setUp.apex === undefined) return
    const edge = setUp.fieldHeight / 2
    canvas.lines('dashed', 'field-rays', [
      { from: at(0, setUp.apex), to: at(-edge, 0) },
      { from: at(0, setUp.apex), to: at(edge, 0) },
    ])
  }

  function drawLamp(lamp: Lamp): void {
    const [from, aim] = [at(lamp.y, lamp.z), at(lamp.aim_y, 0)]
    canvas.body('thick', `lamp lamp-${lamp.number}`, lampOutline(from, aim, pxPerMetre))
    canvas.line('dashed', `aim aim-${lamp.number}`, from, aim)
    canvas.lines('thin', `aim-arrow aim-${lamp.number}`, arrowhead(from, aim))
  }

  function drawHeights(): readonly Dimension[] {
    if (floor === undefined || centre === undefined) return []
    const front = frontOf(setUp)
    const rights = [
      ...heightsOf(setUp, lean).map((lamp) => ({
        className: `dimension-height-${lamp.number}`,
        end: at(lamp.y, lamp.z),
        words: [WORDS.lampShort, WORDS.lampShort],
      })),
      ...(front === undefined
        ? []
        : [
            {
              className: 'dimension-lens',
              end: at(0, front),
              words: setUp.lamps.some((lamp) => atLens(lamp, front, lean))
                ? [UPRIGHT_WORDS.lensAndLampsLong, UPRIGHT_WORDS.lensAndLampsShort]
                : [UPRIGHT_WORDS.lensAboveFloor, WORDS.lensShort],
            },
          ]),
    ]
      .map((one) => ({ ...one, height: metres(floor - one.end.y) }))
      // A lamp below the floor has no height to dimension, but it is drawn at its position.
      .filter(({ height }) => height > 0)
      .sort((a, b) => a.height - b.height)
    const lefts = [
      {
        className: 'dimension-centre',
        end: at(0, 0),
        words: [UPRIGHT_WORDS.centreLong, UPRIGHT_WORDS.centreShort],
        height: centre,
      },
    ]
    const dimension =
      (side: -1 | 1) =>
      (one: (typeof rights)[number], index: number): Dimension => {
        const count = side < 0 ? lefts.length : rights.length
        const x = (side < 0 ? view.left : view.right) - side * ((count - 1 - index) * LANE + (side < 0 ? 16 : 5))
        const shown = show(one.height)
        return {
          className: one.className,
          direction: 'upright',
          from: point(origin.x, floor),
          to: point(one.end.x + side * (one.className === 'dimension-centre' ? BOARD + 2 : 10), one.end.y),
          at: x,
          wordings: [`${one.words[0]} ${shown}`, `${one.words[1]} ${shown}`, ...figures(shown)],
          extensions: [false, true],
        }
      }
    const all = [...lefts.map(dimension(-1)), ...rights.map(dimension(1))]
    for (const one of all) drawDimension(canvas, one)
    return all
  }

  /** Dimensions the horizontal distance of the lens. */
  function drawDistance(): readonly Dimension[] {
    const front = frontOf(setUp)
    if (front === undefined) return []
    const foot = floor ?? view.bottom - LANE - 12
    const shown = show(sideways(0, front, lean).out)
    const dimension: Dimension = {
      className: 'dimension-distance',
      direction: 'across',
      from: point(origin.x, foot),
      to: point(at(0, front).x, foot),
      at: foot + 8 + LANE,
      wordings: [`${UPRIGHT_WORDS.lensLevel(planeOf(setUp))} ${shown}`, ...figures(shown)],
      extensions: [true, true],
    }
    drawDimension(canvas, dimension)
    // A plumb line connects the measured point with the floor.
    const plumb = [{ from: point(dimension.to.x, at(0, front).y), to: point(dimension.to.x, foot - 2) }]
    canvas.lines(
      'dimension',
      'plumb',
      plumb.flatMap((one) => canvas.around(one)),
    )
    return [dimension]
  }

  function drawFloor(): void {
    if (floor === undefined) return
    canvas.line('thick', 'floor', point(view.left, floor), point(view.right, floor))
  }

  function drawAxis(): void {
    const end = (setUp.sensor ?? frontOf(setUp) ?? 0) + metres(22)
    canvas.line('chain', 'axis', at(0, -metres(BOARD + 6)), at(0, end))
  }

  function letter(): void {
    const lettered = { ...view, top: view.top - 20 }
    for (const one of dimensions) letterDimension(canvas, one, lettered)
    if (!isVertical(lean)) canvas.placeText('label-lean', leanPlaces(), lettered)
    if (floor !== undefined) {
      const y = floor + ASCENT + 4
      const across = [view.right - 4, view.right - 60, view.right - 120, view.left + 60]
      canvas.placeText(
        'label-floor',
        across.map((x) => ({ lettering: { text: UPRIGHT_WORDS.floorLabel, at: point(x, y), anchor: 'end' as const } })),
        lettered,
      )
    }
  }

  function* leanPlaces(): Generator<TextPlacement> {
    const text = UPRIGHT_WORDS.leans(leanDegrees(lean), lean > 0)
    const top = at(half, 0)
    for (const up of [4, 10, 18, 28])
      for (const aside of [8, 0, 20, -20, 40, 60]) {
        yield { lettering: { text, at: point(top.x + aside, top.y - up), anchor: 'start' } }
        yield { lettering: { text, at: point(top.x - aside, top.y - up), anchor: 'end' } }
      }
  }

  return { letter }
}
