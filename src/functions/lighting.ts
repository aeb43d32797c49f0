import { type FunctionRecord, list, number, Refusal, record, TEXT, type Type } from '../language/index.ts'
import { ANGLE, ILLUMINANCE, LENGTH, LUMINOUS_INTENSITY, STOP } from '../units/index.ts'
import { HOT_LAMPS, RAW_OR_LINEAR } from './cautions.ts'
import { evennessOf, illuminanceAt, type LampNumbers, spreadPower } from './light-field.ts'
import { coordinate, length, NOT_NEGATIVE, PLAIN, POSITIVE, parameter, positiveLength } from './parameters.ts'

/** A lamp as a value of the language. */
export const LAMP = record('lamp', {
  x: number(LENGTH),
  y: number(LENGTH),
  z: number(LENGTH),
  aim_x: number(LENGTH),
  aim_y: number(LENGTH),
  intensity: number(LUMINOUS_INTENSITY),
  beam_angle: number(ANGLE),
})

const EVENNESS = record('field evenness', {
  least: number(ILLUMINANCE),
  greatest: number(ILLUMINANCE),
  mean: number(ILLUMINANCE),
  spread: number(STOP),
  uniformity: PLAIN,
  plus_minus: PLAIN,
})

const BALANCE = record('shadow balance', {
  shift: number(STOP),
  stronger: TEXT,
  distance_factor: PLAIN,
  power_factor: PLAIN,
})

const QUARTER_TURN = Math.PI / 2
const BEAM = { above: 0, below: Math.PI }
const FRAME = 'origin at the centre of the original, x right, y up the original, z towards the camera'
const LAMPS = parameter('lamps', list(LAMP), 'lamps, in braces: {left, right}')
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

/** At least one lamp, and light somewhere in the field. */
function needLamps(lamps: readonly LampNumbers[]): void {
  if (lamps.length === 0) throw new Refusal('No lamp is given: list at least one, as in {left, right}.', 'lamps')
}

function positiveReadings(readings: readonly number[]): void {
  needReadings(readings)
  if (!readings.every((reading) => reading > 0))
    throw new Refusal('Every reading must be above zero: read again where the meter shows none.', 'readings')
}

function needReadings(readings: readonly number[]): void {
  if (readings.length === 0)
    throw new Refusal('No reading is given: list those of the field, as in {f/8, f/9}.', 'readings')
}

// A loop, not Math.max(...list): a long list would overflow the stack.
const span = (values: readonly number[]): { least: number; greatest: number } => {
  let least = Number.POSITIVE_INFINITY
  let greatest = Number.NEGATIVE_INFINITY
  for (const value of values) {
    if (value < least) least = value
    if (value > greatest) greatest = value
  }
  return { least, greatest }
}

const isStops = (type: Type | undefined): boolean => {
  const of = type?.kind === 'list' ? type.of : type
  return of?.kind === 'number' && of.dimension === STOP
}

function mirrorZone(halfWidth: number, lensHeight: number, lampHeight: number, curl: number): number {
  const angle = Math.atan(halfWidth / lensHeight) + 2 * curl
  if (angle >= QUARTER_TURN)
    throw new Refusal(
      'So much curl mirrors the whole room: flatten the original, or raise the camera, until half the field’s angle and twice the curl stay under 90°.',
      'curl',
    )
  return halfWidth + lampHeight * Math.tan(angle)
}

/** Section 7 of the trade: light, its balance and its evenness. */
export const LIGHTING: readonly FunctionRecord[] = [
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
    validity: `Coordinates: ${FRAME}. A point source: from farther than about five times its own size, else use softbox.`,
    cautions: [HOT_LAMPS],
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
    cautions: [HOT_LAMPS],
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
    validity: 'A beam round its axis that falls as a cosine power; a lamp with a hard-edged reflector does not.',
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
      if (evenness.greatest === 0)
        throw new Refusal('No light reaches the field: aim a lamp at it, or give one more intensity.', 'lamps')
      return { ...evenness }
    },
  },
  {
    name: 'evenness_stops',
    subject: 'lighting',
    about: 'The spread of readings taken over the field.',
    parameters: [
      parameter('readings', { kind: 'list of any' }, 'illuminances or linear values; or readings in stops (EV)'),
    ],
    result: number(STOP),
    formula: 'log2(greatest/least); greatest − least for readings in stops',
    source: 'derived: a stop is a factor of two',
    validity: 'Readings of one meter, walked over the field at 5 or 9 points with the camera and lamps left alone.',
    cautions: [RAW_OR_LINEAR],
    examples: [
      { formula: 'evenness_stops({1000 lx, 800 lx, 960 lx})', gives: '0.3219281 stop', within: '0.0000001 stop' },
      { formula: 'evenness_stops({10.3 EV, 10.1 EV, 10.2 EV})', gives: '0.2 stop' },
      { formula: 'evenness_stops({0.5, 0.25})', gives: '1 stop' },
      { formula: 'evenness_stops({1000 lx, 0 lx})', refuses: 'readings' },
    ],
    compute: (readings: readonly number[]) => {
      positiveReadings(readings)
      const { least, greatest } = span(readings)
      return Math.log2(greatest / least)
    },
    computeFor: (args) =>
      isStops(args[0])
        ? (readings: readonly number[]) => {
            needReadings(readings)
            const { least, greatest } = span(readings)
            return greatest - least
          }
        : (readings: readonly number[]) => {
            positiveReadings(readings)
            const { least, greatest } = span(readings)
            return Math.log2(greatest / least)
          },
    warn: ([readings]) =>
      readings?.kind === 'list' && readings.of.kind === 'number' && readings.of.notation === 'f-number'
        ? 'These are f-numbers, whose squares follow the light: evenness_from_apertures is meant. This gives half the spread.'
        : undefined,
  },
  {
    name: 'shadow_balance',
    subject: 'lighting',
    about: 'Which of two lamps is stronger, from the two shadows of a peg.',
    parameters: [
      parameter('left_shadow', { kind: 'any' }, 'reading in the shadow left of the peg, lit by the left lamp alone', {
        range: POSITIVE,
      }),
      parameter(
        'right_shadow',
        { kind: 'any' },
        'reading in the shadow right of the peg, lit by the right lamp alone',
        {
          range: POSITIVE,
        },
      ),
      parameter('ambient', { kind: 'any' }, 'the same reading with both lamps off', {
        default: '0',
        range: NOT_NEGATIVE,
      }),
    ],
    result: BALANCE,
    formula:
      'shift = log2((left − ambient)/(right − ambient)); distance_factor = 2^(|shift|/2); power_factor = 2^−|shift|',
    source: 'common practice, no source; the arithmetic derived from inverse square',
    validity:
      'A peg square on plain card at the centre of the field, lamps of one kind at both sides. The side with the paler shadow has the stronger light. The distance factor holds along the lamp’s own ray.',
    cautions: [RAW_OR_LINEAR],
    examples: [
      { formula: 'shadow_balance(0.4, 0.2).shift', gives: '1 stop' },
      { formula: 'shadow_balance(0.2, 0.4).stronger', gives: '"right"' },
      // One stop stronger: out by sqrt(2), or down to a half.
      {
        formula: 'shadow_balance(500 lx, 300 lx, ambient: 100 lx).distance_factor',
        gives: '1.4142136',
        within: '0.0000001',
      },
      { formula: 'shadow_balance(500 lx, 300 lx, ambient: 100 lx).power_factor', gives: '0.5' },
      { formula: 'shadow_balance(0.4, 0.2, ambient: 0.2)', refuses: 'ambient' },
    ],
    compute: (left: number, right: number, ambient: number) => {
      if (ambient >= Math.min(left, right))
        throw new Refusal(
          'The ambient reading is not below both shadows: darken the room, or read the shadows again.',
          'ambient',
        )
      const shift = Math.log2((left - ambient) / (right - ambient))
      const even = Math.abs(shift) < 1e-9
      return {
        shift,
        stronger: even ? 'neither' : shift > 0 ? 'left' : 'right',
        distance_factor: 2 ** (Math.abs(shift) / 2),
        power_factor: 2 ** -Math.abs(shift),
      }
    },
  },
  {
    name: 'mirror_zone',
    subject: 'lighting',
    about: 'How far from the axis a glossy original mirrors what stands at a height.',
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
      // atan(0.25) + 4° = 18.0362°, whose tangent is 0.325594.
      { formula: 'mirror_zone(0.3 m, 1.2 m, 0.6 m, curl: 2 deg)', gives: '495.36 mm', within: '0.01 mm' },
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
  {
    name: 'lamp_distance_for_shift',
    subject: 'lighting',
    about: 'Where to put a lamp for a change of light.',
    parameters: [
      positiveLength('distance', 'of the lamp now, along its own ray'),
      parameter('shift', number(STOP), 'wanted change, positive for more light'),
    ],
    result: number(LENGTH),
    formula: 'd 2^(−s/2)',
    source: 'derived: inverse square law, 2^s = (d/d′)²',
    validity:
      'A small lamp moved along its own ray; a soft box closer than about five times its size falls off more slowly.',
    cautions: [HOT_LAMPS],
    examples: [
      { formula: 'lamp_distance_for_shift(2 m, 2 stop)', gives: '1 m' },
      { formula: 'lamp_distance_for_shift(1 m, -1 stop)', gives: '1414.2136 mm', within: '0.0001 mm' },
      { formula: 'lamp_distance_for_shift(0 m, 1 stop)', refuses: 'distance' },
    ],
    compute: (distance: number, shift: number) => distance * 2 ** (-shift / 2),
  },
]

function highLamp(elevation: number): string | undefined {
  return elevation > Math.PI / 4 + 1e-9
    ? 'Over 45°: a level glossy original may mirror this lamp into the lens; check it against mirror_zone.'
    : undefined
}
