import { type FunctionRecord, number, Refusal, record } from '../../language/index.ts'
import { ANGLE, ILLUMINANCE, LENGTH, LUMINOUS_INTENSITY, STOP } from '../../units/index.ts'
import { HOT_LAMPS } from '../maths/cautions.ts'
import { coordinate, length, NOT_NEGATIVE, PLAIN, parameter, positiveLength } from '../maths/parameters.ts'
import { BEAM, LAMP, LAMPS, needLamps } from './lamp-parameters.ts'
import { DARK, evennessOf, illuminanceAt, type LampNumbers, spreadPower } from './light-field.ts'

const EVENNESS = record('field evenness', {
  least: number(ILLUMINANCE),
  greatest: number(ILLUMINANCE),
  mean: number(ILLUMINANCE),
  spread: number(STOP),
  uniformity: PLAIN,
  plus_minus: PLAIN,
})

const QUARTER_TURN = Math.PI / 2
const FRAME = 'origin at the centre of the original, x right, y up the original, z towards the camera'
const AIM = [
  coordinate('aim_x', 'where the axis meets the original, to the right of its centre', { default: '0 mm' }),
  coordinate('aim_y', 'where the axis meets the original, above its centre', { default: '0 mm' }),
]
const OUTPUT = [
  parameter('intensity', number(LUMINOUS_INTENSITY), 'intensity on the axis', {
    default: '1000 cd',
    range: NOT_NEGATIVE,
  }),
  parameter('beam_angle', number(ANGLE), 'full angle between the directions of half intensity', {
    default: '120 deg',
    range: BEAM,
  }),
]

function mirrorZone(halfWidth: number, lensHeight: number, lampHeight: number, curl: number): number {
  const angle = Math.atan(halfWidth / lensHeight) + 2 * curl
  if (angle >= QUARTER_TURN)
    throw new Refusal(
      'With this “curl” the original reflects the whole room. Flatten it, or raise the camera, until half the field’s angle and twice the curl are under 90° together.',
      'curl',
    )
  return halfWidth + lampHeight * Math.tan(angle)
}

/** Lamps, and how evenly they light. */
export const LAMP_LIGHT: readonly FunctionRecord[] = [
  {
    name: 'lamp',
    subject: 'lighting',
    about: 'A lamp by its position, aim, intensity and beam.',
    parameters: [
      coordinate('x', 'to the right of the original’s centre'),
      coordinate('y', 'above the original’s centre, along the original'),
      positiveLength('z', 'height over the plane of the original'),
      ...AIM,
      ...OUTPUT,
    ],
    result: LAMP,
    formula: '(x, y, z), aim (aim_x, aim_y, 0), I0, beam angle',
    source: 'common practice, no source',
    validity: `Coordinates: ${FRAME}. A point source: farther than about five times its own size; nearer, use softbox.`,
    safety: [HOT_LAMPS],
    examples: [
      { formula: 'lamp(1 m, 0 m, 1 m).intensity', gives: '1000 cd' },
      { formula: 'lamp(-1 m, 0 m, 1 m, aim_x: 0.1 m).aim_x', gives: '0.1 m' },
      { formula: 'lamp(1 m, 0 m, 0 m)', refuses: 'z' },
      { formula: 'lamp(1 m, 0 m, 1 m, beam_angle: 180 deg)', refuses: 'beam_angle' },
    ],
    compute: (
      x: number,
      y: number,
      z: number,
      aim_x: number,
      aim_y: number,
      intensity: number,
      beam_angle: number,
    ) => ({ x, y, z, aim_x, aim_y, intensity, beam_angle }),
  },
  {
    name: 'lamp_at',
    subject: 'lighting',
    about: 'A lamp by its distance from its aim, its elevation and its bearing.',
    parameters: [
      positiveLength('distance', 'from the aim point to the lamp'),
      parameter('elevation', number(ANGLE), 'of the lamp over the original, seen from its aim', {
        range: { above: 0, most: QUARTER_TURN },
      }),
      parameter('azimuth', number(ANGLE), 'anticlockwise from +x, seen from the camera: 0° right, 180° left'),
      ...AIM,
      ...OUTPUT,
    ],
    result: LAMP,
    formula: 'x = aim_x + d cos el cos az; y = aim_y + d cos el sin az; z = d sin el',
    source: 'derived: spherical to Cartesian coordinates about the aim point',
    validity: `Coordinates: ${FRAME}.`,
    safety: [HOT_LAMPS],
    examples: [
      { formula: 'lamp_at(2 m, 30 deg, 0 deg).z', gives: '1 m' },
      { formula: 'lamp_at(2 m, 30 deg, 180 deg, aim_x: 0.1 m).x', gives: '-1632.0508 mm', within: '0.001 mm' },
      { formula: 'lamp_at(2 m, 0 deg, 0 deg)', refuses: 'elevation' },
    ],
    compute: (
      distance: number,
      elevation: number,
      azimuth: number,
      aim_x: number,
      aim_y: number,
      intensity: number,
      beam_angle: number,
    ) => {
      const run = distance * Math.cos(elevation)
      return {
        x: aim_x + run * Math.cos(azimuth),
        y: aim_y + run * Math.sin(azimuth),
        z: distance * Math.sin(elevation),
        aim_x,
        aim_y,
        intensity,
        beam_angle,
      }
    },
    advise: (_distance: number, elevation: number) => highLamp(elevation),
  },
  {
    name: 'spread_power',
    subject: 'lighting',
    about: 'The cosine power of a lamp from its beam angle.',
    parameters: [
      parameter('beam_angle', number(ANGLE), 'full angle between the directions of half intensity', { range: BEAM }),
    ],
    result: PLAIN,
    formula: 'n = ln 0.5/ln cos(beam_angle/2)',
    source: 'derived: cos^n θ = 1/2 at θ = beam_angle/2',
    validity: 'A beam around its axis that falls as a cosine power; a lamp with a hard-edged reflector does not.',
    examples: [
      { formula: 'spread_power(120 deg)', gives: '1' },
      { formula: 'spread_power(90 deg)', gives: '2' },
      { formula: 'spread_power(0 deg)', refuses: 'beam_angle' },
    ],
    compute: (beamAngle: number) => spreadPower(beamAngle),
  },
  {
    name: 'illuminance_at',
    subject: 'lighting',
    about: 'Illuminance at a point of the original.',
    also: ['inverse square', 'lux', 'light level'],
    parameters: [
      LAMPS,
      coordinate('x', 'to the right of the original’s centre', { default: '0 mm' }),
      coordinate('y', 'above the original’s centre', { default: '0 mm' }),
    ],
    result: number(ILLUMINANCE),
    formula: 'E = Σ I0 cos^n θ cos(incidence)/d²',
    source: 'point-by-point method of the IES Lighting Handbook: inverse square and cosine laws, summed over the lamps',
    validity: 'Point lamps, no light from walls or ceiling.',
    examples: [
      // A diffuse-beam lamp 2 m straight above: 1000 cd/4 m² = 250 lx.
      { formula: 'illuminance_at({lamp(0 m, 0 m, 2 m)}, 0 m, 0 m)', gives: '250 lx' },
      // The same lamp seen from 2 m to the side: d² = 8 m², both cosines 1/sqrt(2): 1000 · 0.5/8.
      { formula: 'illuminance_at({lamp(0 m, 0 m, 2 m)}, 2 m, 0 m)', gives: '62.5 lx' },
    ],
    compute: (lamps: readonly LampNumbers[], x: number, y: number) => {
      needLamps(lamps)
      return illuminanceAt(lamps, x, y)
    },
  },
  {
    name: 'field_evenness',
    subject: 'lighting',
    about: 'How even the light over the original is.',
    also: ['vignetting', 'uniformity', 'evenness', 'hot spot'],
    parameters: [
      LAMPS,
      positiveLength('width', 'of the field, along x'),
      positiveLength('height', 'of the field, along y'),
    ],
    result: EVENNESS,
    formula:
      'spread = log2(E greatest/E least); uniformity = E least/E mean; plus_minus = (E greatest − E least)/(E greatest + E least)',
    source: 'point-by-point method of the IES Lighting Handbook; the three measures are common practice',
    validity:
      'Sampled to the edges at 41 × 41 points or more, corners, edge middles and centre among them; the mean is by area.',
    examples: [
      // One lamp 1 m above the centre: E falls as z²/d⁴·I, so corner of 2 m × 2 m is 1/9 of the centre.
      {
        formula: 'field_evenness({lamp(0 m, 0 m, 1 m)}, 2 m, 2 m).spread',
        gives: '3.169925 stop',
        within: '0.000001 stop',
      },
      { formula: 'field_evenness({lamp(0 m, 0 m, 1 m)}, 2 m, 2 m).plus_minus', gives: '0.8' },
      {
        formula:
          'field_evenness({lamp(1.35 m, 0 m, 1.35 m, aim_x: -0.3 m), lamp(-1.35 m, 0 m, 1.35 m, aim_x: 0.3 m)}, 0.6 m, 0.45 m).spread',
        gives: '0.0998 stop',
        within: '0.00005 stop',
      },
      { formula: 'field_evenness({lamp(0 m, 0 m, 1 m)}, 0 m, 2 m)', refuses: 'width' },
    ],
    mayBeInfinite: true,
    compute: (lamps: readonly LampNumbers[], width: number, height: number) => {
      needLamps(lamps)
      const evenness = evennessOf(lamps, width, height)
      if (evenness.greatest < DARK)
        throw new Refusal(
          '“lamps” give the field no light. Aim one at it, or give one of them more intensity.',
          'lamps',
        )
      return { ...evenness }
    },
  },
  {
    name: 'mirror_zone',
    subject: 'lighting',
    about: 'How far from the axis a glossy original reflects what is at a height.',
    also: ['glare', 'reflections', 'family of angles'],
    parameters: [
      length('half_width', 'half the width of the original'),
      positiveLength('lens_height', 'from the original to the entrance pupil'),
      length('lamp_height', 'from the original to the lamp’s level'),
      parameter('curl', number(ANGLE), 'tilt of the surface at its edge, edge down positive', {
        default: '0 deg',
        range: { above: -Math.PI / 4, below: Math.PI / 4 },
      }),
    ],
    result: number(LENGTH),
    formula: 'w + z tan(atan(w/h) + 2 curl); flat: w (1 + z/h)',
    source: 'derived: law of reflection at the edge of the original; a tilted mirror turns its ray by twice the tilt',
    validity:
      'Heights to the entrance pupil’s level and the lamp’s. Everything between here and the axis at that height is mirrored: the lamp’s inner edge and any lit ceiling must lie outside, the camera is masked.',
    examples: [
      { formula: 'mirror_zone(0.3 m, 1.2 m, 0.6 m)', gives: '0.45 m' },
      // atan(0.25) + 4° = 18.0362°, whose tangent is 0.325619.
      { formula: 'mirror_zone(0.3 m, 1.2 m, 0.6 m, curl: 2 deg)', gives: '495.3715 mm', within: '0.001 mm' },
      { formula: 'mirror_zone(0.3 m, 1.2 m, 0.6 m, curl: 44 deg)', refuses: 'curl' },
      { formula: 'mirror_zone(0.3 m, 0 m, 0.6 m)', refuses: 'lens_height' },
    ],
    compute: mirrorZone,
  },
  {
    name: 'lamp_elevation',
    subject: 'lighting',
    about: 'A lamp’s elevation seen from the original’s centre.',
    parameters: [
      length('height', 'of the lamp, or of its highest lit point, over the original'),
      positiveLength('horizontal_distance', 'of that point from the centre, along the original'),
    ],
    result: number(ANGLE),
    formula: 'atan(height/horizontal_distance)',
    source: 'derived: plane trigonometry; the 45° limit is common practice, no source',
    validity: 'To the highest lit point: at or under 45° keeps glare of a level original out of the lens.',
    examples: [
      { formula: 'lamp_elevation(1 m, 1 m)', gives: '45 deg' },
      { formula: 'lamp_elevation(1 m, 0 m)', refuses: 'horizontal_distance' },
    ],
    compute: (height: number, horizontal: number) => Math.atan(height / horizontal),
    advise: (height: number, horizontal: number) => highLamp(Math.atan(height / horizontal)),
  },
]

function highLamp(elevation: number): string | undefined {
  return elevation > Math.PI / 4 + 1e-9
    ? 'Over 45°: a level glossy original may reflect this lamp into the lens; check it against the mirror zone.'
    : undefined
}
