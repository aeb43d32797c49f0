import { type FunctionRecord, number, Refusal, record } from '../../language/index.ts'
import { LENGTH } from '../../units/index.ts'
import { HOT_LAMPS } from '../maths/cautions.ts'
import { length, positiveLength } from '../maths/parameters.ts'

const SHADOW = record('shadow of the barrel', {
  clearance: number(LENGTH),
  shaded: number(LENGTH),
  highest: number(LENGTH),
})

/** The lens, the lamps and the field, in the plane through the lens’s axis and the middle of a lamp. */
interface Section {
  readonly lampOut: number
  readonly lampHeight: number
  readonly halfWidth: number
  readonly frontHeight: number
  readonly barrelRadius: number
  readonly lampRadius: number
}

/** The slope at which light from the outermost point of a lamp reaches a place: height over distance. */
function steepest(out: number, up: number, lampRadius: number): number {
  const angle = Math.atan2(up, out) + Math.asin(Math.min(1, lampRadius / Math.hypot(out, up)))
  return angle >= Math.PI / 2 ? Number.POSITIVE_INFINITY : Math.tan(angle)
}

/** By how much the light for the far edge of the field passes the front rim; negative where the barrel is in its way. */
const clearance = ({ lampOut, lampHeight, halfWidth, frontHeight, barrelRadius, lampRadius }: Section): number =>
  frontHeight / steepest(lampOut + halfWidth, lampHeight, lampRadius) - halfWidth - barrelRadius

/** How far the shadow reaches into the field from its far edge: down the line that touches the lamp and the front rim. */
function shaded({ lampOut, lampHeight, halfWidth, frontHeight, barrelRadius, lampRadius }: Section): number {
  const slope = steepest(lampOut - barrelRadius, lampHeight - frontHeight, lampRadius)
  if (slope <= 0) return 0
  const edge = barrelRadius - frontHeight / slope
  return Math.min(2 * halfWidth, Math.max(0, edge + halfWidth))
}

/** The greatest height of the lamp at which the light for the far edge still passes the front rim. */
function highest({ lampOut, halfWidth, frontHeight, barrelRadius, lampRadius }: Section): number {
  const slope = frontHeight / (barrelRadius + halfWidth)
  return (lampOut + halfWidth) * slope - lampRadius * Math.hypot(1, slope)
}

/** What the lens itself keeps from the light. */
export const LENS_SHADOW: readonly FunctionRecord[] = [
  {
    name: 'barrel_shadow',
    subject: 'lighting',
    about: 'Whether the barrel of the lens shades the far side of the field from a lamp.',
    also: ['lens shadow', 'shading', 'hood in the light', 'macro lighting', 'working distance', 'life size'],
    parameters: [
      positiveLength('lamp_out', 'from the lens’s axis to the middle of the lamp'),
      positiveLength('lamp_height', 'from the original up to the middle of the lamp'),
      positiveLength('width', 'of the field, along the line of the lamps'),
      positiveLength('front_height', 'from the original up to the front rim of the lens or its hood'),
      positiveLength('barrel_radius', 'half the outer diameter of the barrel or hood, where it is widest'),
      length('lamp_radius', 'of the lamp’s lit face', { default: '0 mm' }),
    ],
    result: SHADOW,
    formula:
      'clearance = d (X + w)/H − w − r with w half the field; highest H = d (X + w)/(r + w); shaded to x = r − d (X − r)/(H − d)',
    source:
      'derived: the straight line from the lamp past the front rim to the field; a lamp of some size by its tangent',
    validity:
      'A barrel as wide along its whole length as at its front, one lamp beside the lens. With two lamps the shaded strip loses one of them, with a ring of lamps only a part. Negative clearance: in shadow.',
    safety: [HOT_LAMPS],
    examples: [
      // The line from 200 mm out and 200 mm up to 18 mm past the axis is 50 · 218/200 − 18 = 36.5 mm out at the rim.
      { formula: 'barrel_shadow(200 mm, 200 mm, 36 mm, 50 mm, 35 mm).clearance', gives: '1.5 mm', within: '1e-9 mm' },
      { formula: 'barrel_shadow(200 mm, 200 mm, 36 mm, 50 mm, 35 mm).shaded', gives: '0 mm' },
      // 35 − 50 · 165/250 = 2 mm past the axis, of a field that begins at −18 mm.
      { formula: 'barrel_shadow(200 mm, 300 mm, 36 mm, 50 mm, 35 mm).shaded', gives: '20 mm', within: '1e-9 mm' },
      { formula: 'barrel_shadow(194 mm, 300 mm, 36 mm, 50 mm, 35 mm).highest', gives: '200 mm', within: '1e-9 mm' },
      { formula: 'barrel_shadow(200 mm, 200 mm, 36 mm, 50 mm, 35 mm, 20 mm).clearance < 0 mm', gives: 'yes' },
      { formula: 'barrel_shadow(30 mm, 200 mm, 36 mm, 50 mm, 35 mm)', refuses: 'lamp_out' },
      { formula: 'barrel_shadow(200 mm, 200 mm, 36 mm, 0 mm, 35 mm)', refuses: 'front_height' },
    ],
    compute: (
      lampOut: number,
      lampHeight: number,
      width: number,
      frontHeight: number,
      barrelRadius: number,
      lampRadius: number,
    ) => {
      if (lampOut - lampRadius <= barrelRadius)
        throw new Refusal(
          '“lamp_out” puts the lamp over the barrel. Give a place beside it: more than the radii of barrel and lamp together.',
          'lamp_out',
        )
      const section = { lampOut, lampHeight, halfWidth: width / 2, frontHeight, barrelRadius, lampRadius }
      return { clearance: clearance(section), shaded: shaded(section), highest: highest(section) }
    },
  },
]
