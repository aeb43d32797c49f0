import { Canvas } from '../canvas/canvas.ts'
import { type Dimension, drawDimension, figures, LANE, letterDimension } from '../canvas/dimension-line.ts'
import type { Draw, DrawingInputs } from '../canvas/drawing-options.ts'
import { lengthIn, lengthUnit } from '../canvas/drawing-unit.ts'
import { type Box, type Point, point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import type { Metres } from '../canvas/measures.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { fitScale } from '../canvas/scale.ts'
import { TITLES } from '../canvas/words.ts'
import { SHADOW_WORDS as WORDS } from './words.ts'

const PAD = 4
const NARROWEST = 240
const ROW = 18
const TALLEST = 0.7
const FARTHEST: Metres = 100
/** Points on the outline of a lamp. */
const CORNERS = 24

/** Lens, lamp and original in the plane through the lens’s axis and the middle of the lamp, as `barrel_shadow` has them. */
interface Section {
  readonly lampOut: Metres
  readonly lampHeight: Metres
  readonly halfWidth: Metres
  readonly frontHeight: Metres
  readonly barrelRadius: Metres
  readonly lampRadius: Metres
}

interface Ray {
  /** Where it touches the lamp, and where it meets the plane of the original; x from the axis, y up. */
  readonly lamp: Point
  readonly face: Point
}

/** The line through a place that touches the lamp from above, down to the face of the original. */
function touching({ lampOut, lampHeight, lampRadius }: Section, past: Point): Ray | undefined {
  const [out, up] = [lampOut - past.x, lampHeight - past.y]
  const distance = Math.hypot(out, up)
  if (!(distance > lampRadius)) return undefined
  const angle = Math.atan2(up, out) + Math.asin(lampRadius / distance)
  const along = Math.sqrt(distance ** 2 - lampRadius ** 2)
  if (!(Math.sin(angle) > 1e-6)) return undefined
  const lamp = point(past.x + along * Math.cos(angle), past.y + along * Math.sin(angle))
  return { lamp, face: point(past.x - past.y / Math.tan(angle), 0) }
}

function readSection(inputs: DrawingInputs, omissions: string[]): Section | undefined {
  const read = numberReader(omissions)
  const lampOut = read.positive(inputs.lamp_out, WORDS.lampOut, FARTHEST)
  const lampHeight = read.positive(inputs.lamp_height, WORDS.lampHeight, FARTHEST)
  const width = read.positive(inputs.width, WORDS.width, FARTHEST)
  const frontHeight = read.positive(inputs.front_height, WORDS.frontHeight, FARTHEST)
  const barrelRadius = read.positive(inputs.barrel_radius, WORDS.barrelRadius, FARTHEST)
  const lampRadius = inputs.lamp_radius ? (read.positive(inputs.lamp_radius, WORDS.lampRadius, FARTHEST) ?? 0) : 0
  if (!lampOut || !lampHeight || !width || !frontHeight || !barrelRadius) return undefined
  return { lampOut, lampHeight, halfWidth: width / 2, frontHeight, barrelRadius, lampRadius }
}

/** Draws the lens between two lamps close to an original, with the last light that passes it and the strip in its shadow. */
export const drawLensShadow: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES['lens-shadow']
  const show = lengthIn(lengthUnit(options.unit))
  const omissions: string[] = []
  const section = readSection(inputs, omissions)
  if (!section) return nothingDrawn(width, title, omissions, WORDS.unknown)
  const { lampOut, lampHeight, halfWidth, frontHeight, barrelRadius, lampRadius } = section
  if (lampOut - lampRadius <= barrelRadius) omissions.push(WORDS.overBarrel)

  const side = Math.max(lampOut + lampRadius, halfWidth, barrelRadius) * 1.02
  const barrelTop = Math.max(lampHeight, frontHeight + 2 * barrelRadius)
  const tall = Math.max(barrelTop, lampHeight + lampRadius)
  const scale = fitScale(
    { width: 2 * side, height: tall },
    { width: width - 2 * PAD - 2 * LANE, height: width * TALLEST },
    options.zoom ?? 1,
  )
  const [middle, ground] = [width / 2, PAD + ROW + 6 + tall * scale.pxPerMetre]
  const on = ({ x, y }: Point): Point => point(middle + x * scale.pxPerMetre, ground - y * scale.pxPerMetre)
  const at = (x: Metres, y: Metres): Point => on(point(x, y))
  const height = ground + LANE + ROW + PAD
  const whole: Box = { left: 0, right: width, top: 0, bottom: height }

  const canvas = new Canvas(width)
  canvas.placeText(
    'head',
    [WORDS.head(scale.name), WORDS.headShort(scale.name)].map((text) => ({
      lettering: { text, at: point(PAD, PAD + ASCENT + 1), anchor: 'start' as const },
    })),
    whole,
  )
  const farEdge = touching(section, point(-halfWidth, 0))
  const pastRim = lampOut - lampRadius > barrelRadius ? touching(section, point(barrelRadius, frontHeight)) : undefined
  const reach = pastRim ? Math.min(halfWidth, pastRim.face.x) : -halfWidth
  const shaded = Math.max(0, reach + halfWidth)
  canvas.line('chain', 'axis', at(0, 0), at(0, tall))
  canvas.line('thin', 'board', at(-side, 0), at(side, 0))
  canvas.line('emphasis', 'original', at(-halfWidth, 0), at(halfWidth, 0))
  canvas.curves('thick', 'barrel', [
    [
      at(-barrelRadius, barrelTop),
      at(-barrelRadius, frontHeight),
      at(barrelRadius, frontHeight),
      at(barrelRadius, barrelTop),
    ],
  ])
  for (const way of [-1, 1])
    canvas.outline(
      'thick',
      'lamp',
      Array.from({ length: CORNERS }, (_, i) => {
        const turn = (2 * Math.PI * i) / CORNERS
        const radius = Math.max(lampRadius, 3 / scale.pxPerMetre)
        return at(way * lampOut + radius * Math.cos(turn), lampHeight + radius * Math.sin(turn))
      }),
    )
  const ray = shaded > 0 ? pastRim : farEdge
  if (ray)
    canvas.line(shaded > 0 ? 'dashed' : 'thin', shaded > 0 ? 'shadow-edge' : 'last-light', on(ray.lamp), on(ray.face))
  const dimensions: readonly Dimension[] = [
    ...(shaded > 0
      ? [
          {
            className: 'dimension-shaded',
            direction: 'across' as const,
            from: at(-halfWidth, 0),
            to: at(reach, 0),
            at: ground + LANE,
            wordings: WORDS.inShadow(show(shaded)),
          },
        ]
      : []),
    {
      className: 'dimension-front',
      direction: 'upright',
      from: at(barrelRadius, 0),
      to: at(barrelRadius, frontHeight),
      at: at(Math.max(barrelRadius, halfWidth), 0).x + LANE,
      wordings: figures(show(frontHeight)),
    },
    {
      className: 'dimension-lamp',
      direction: 'upright',
      from: at(lampOut, 0),
      to: at(lampOut, lampHeight),
      at: at(side, 0).x + LANE / 2,
      wordings: figures(show(lampHeight)),
    },
  ]
  for (const dimension of dimensions) drawDimension(canvas, dimension)
  for (const dimension of dimensions) letterDimension(canvas, dimension, whole)

  const description = [
    WORDS.introduction(scale.name),
    ...(pastRim ? [shaded > 0 ? WORDS.shaded(show(shaded)) : WORDS.passes] : []),
  ].join(' ')
  return { node: canvas.node(height, title, description), title, description, omissions, width, height }
}
