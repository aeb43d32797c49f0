import { type FunctionRecord, list, number, Refusal, record, TEXT, type Type, YES_NO } from '../language/index.ts'
import { ANGLE, ENERGY, ILLUMINANCE, LENGTH, LUMINANCE, LUMINOUS_INTENSITY, NONE, STOP } from '../units/index.ts'
import { FLASH_CAPACITORS, HOT_LAMPS, RAW_OR_LINEAR } from './cautions.ts'
import {
  DARK,
  diffuserPoints,
  evennessOf,
  evenWidth,
  illuminanceAt,
  type LampNumbers,
  spreadPower,
} from './light-field.ts'
import {
  COUNT,
  coordinate,
  F_NUMBER,
  length,
  NOT_NEGATIVE,
  PLAIN,
  POSITIVE,
  parameter,
  positiveLength,
  SHARE,
  STOPS,
} from './parameters.ts'
import { placePair } from './place-lamps.ts'

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

const AREA = record('even area', { width: number(LENGTH), height: number(LENGTH) })

const PLACES = record('pair of lamps', {
  x: number(LENGTH),
  z: number(LENGTH),
  aim_x: number(LENGTH),
  spread: number(STOP),
  elevation: number(ANGLE),
  met: YES_NO,
  binding: TEXT,
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
      if (evenness.greatest < DARK)
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
      { formula: 'evenness_stops({1000 lx, 0 lx})', refuses: 'above zero' },
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
  {
    name: 'lamp_distance_for_shift',
    subject: 'lighting',
    about: 'Where to put a lamp for a change of light.',
    parameters: [
      positiveLength('distance', 'of the lamp now, along its own ray'),
      parameter('shift', number(STOP), 'wanted change, positive for more light', { range: STOPS }),
    ],
    result: number(LENGTH),
    formula: 'd 2^(−s/2)',
    source: 'derived: inverse square law, 2^s = (d/d′)²',
    validity:
      'A small lamp moved along its own ray; a soft box closer than about five times its size falls off more slowly.',
    safety: [HOT_LAMPS],
    examples: [
      { formula: 'lamp_distance_for_shift(2 m, 2 stop)', gives: '1 m' },
      { formula: 'lamp_distance_for_shift(1 m, -1 stop)', gives: '1414.2136 mm', within: '0.0001 mm' },
      { formula: 'lamp_distance_for_shift(0 m, 1 stop)', refuses: 'distance' },
    ],
    compute: (distance: number, shift: number) => distance * 2 ** (-shift / 2),
  },
  {
    name: 'softbox',
    subject: 'lighting',
    about: 'A soft box or diffuser: a grid of points in place of one lamp.',
    parameters: [
      parameter('lamp', LAMP, 'the lamp it replaces: its middle, aim and whole intensity'),
      positiveLength('width', 'of the diffuser, level with the original'),
      positiveLength('height', 'of the diffuser, square to its width'),
      parameter('grid', PLAIN, 'points along each side', { default: '5', range: { ...COUNT, most: 50 } }),
    ],
    result: list(LAMP),
    formula: 'grid² points at the middles of equal cells, axes parallel, I0/grid² each, I ∝ cos θ',
    source: 'derived: midpoint rule over a surface of uniform luminance',
    validity:
      'A diffuser lit evenly, which spreads as cos θ whatever the bare lamp’s beam. Refine the grid until the result stays: cells no wider than a third of the nearest distance.',
    safety: [HOT_LAMPS],
    examples: [
      // At 2 m a 0.2 m box differs from its point by under 1 %: 1000 cd/4 m² = 250 lx.
      {
        formula: 'illuminance_at(softbox(lamp(0 m, 0 m, 2 m), 0.2 m, 0.2 m), 0 m, 0 m)',
        gives: '250 lx',
        within: '1 lx',
      },
      { formula: 'softbox(lamp(0 m, 0 m, 2 m), 0.2 m, 0.2 m, grid: 0)', refuses: 'grid' },
      { formula: 'softbox(lamp(2 m, 0 m, 0.1 m), 0.2 m, 1 m)', refuses: 'height' },
    ],
    compute: (lamp: LampNumbers, width: number, height: number, grid: number) => {
      const points = diffuserPoints(lamp, width, height, grid)
      if (points.some(({ z }) => z <= 0))
        throw new Refusal(
          'The soft box reaches down through the original: raise the lamp, or give less height.',
          'height',
        )
      return points.map((point) => ({ ...point }))
    },
  },
  {
    name: 'all_lamps',
    subject: 'lighting',
    about: 'Several soft boxes or lists of lamps as one list.',
    parameters: [parameter('lamps', list(LAMP), 'lists of lamps, one after another')],
    variadic: true,
    result: list(LAMP),
    formula: 'the lists joined',
    source: 'derived: light adds',
    examples: [
      {
        formula: 'illuminance_at(all_lamps({lamp(0 m, 0 m, 2 m)}, {lamp(0 m, 0 m, 1 m)}), 0 m, 0 m)',
        gives: '1250 lx',
      },
    ],
    compute: (...lists: (readonly LampNumbers[])[]) => lists.flat().map((lamp) => ({ ...lamp })),
  },
  {
    name: 'evenness_from_apertures',
    subject: 'lighting',
    about: 'The spread of f-numbers read over the field.',
    parameters: [parameter('readings', list(F_NUMBER), 'f-numbers at one time and speed', { range: POSITIVE })],
    result: number(STOP),
    formula: '2 log2(greatest/least)',
    source: 'derived: light follows the square of the f-number',
    validity: 'Readings of one meter at one time and speed; tenths through meter_aperture.',
    examples: [
      { formula: 'evenness_from_apertures({f/8, f/16, f/11})', gives: '2 stop' },
      {
        formula: 'evenness_from_apertures({meter_aperture(f/8, 3), meter_aperture(f/8, 1)})',
        gives: '0.2 stop',
        within: '0.000000001 stop',
      },
      { formula: 'evenness_from_apertures({f/8, f/0})', refuses: 'readings' },
    ],
    compute: (readings: readonly number[]) => {
      positiveReadings(readings)
      const { least, greatest } = span(readings)
      return 2 * Math.log2(greatest / least)
    },
  },
  {
    name: 'meter_aperture',
    subject: 'lighting',
    about: 'The aperture a meter shows as an f-number and tenths.',
    parameters: [
      parameter('aperture', F_NUMBER, 'the f-number shown', { range: POSITIVE }),
      parameter('tenths', { kind: 'any' }, 'the tenths beside it: 3, or 0.3 stop', { range: { least: 0, below: 10 } }),
    ],
    result: F_NUMBER,
    formula: 'N 2^(s/2), s = tenths/10 stop',
    source: 'common practice, no source: meters count on from a whole or third mark in tenths of a stop',
    examples: [
      // Half a stop past f/8: 8 · 2^(1/4).
      { formula: 'meter_aperture(f/8, 5)', gives: '9.5136569', within: '0.0000001' },
      { formula: 'meter_aperture(f/8, 0.5 stop)', gives: '9.5136569', within: '0.0000001' },
      { formula: 'meter_aperture(f/8, 3.5)', refuses: 'tenths' },
    ],
    compute: (aperture: number, tenths: number) => aperture * 2 ** (tenthsOf(tenths) / 2),
    computeFor: ([, tenths]) =>
      isStops(tenths)
        ? (aperture: number, stops: number) => aperture * 2 ** (stops / 2)
        : (aperture: number, count: number) => {
            if (tenths?.kind !== 'number' || tenths.dimension !== NONE)
              throw new Refusal('Tenths are a plain number, 3, or stops, 0.3 stop.', 'tenths')
            return aperture * 2 ** (tenthsOf(count) / 2)
          },
  },
  {
    name: 'even_area',
    subject: 'lighting',
    about: 'The largest centred rectangle that fixed lamps light evenly enough.',
    parameters: [
      LAMPS,
      parameter('limit', number(STOP), 'the most the light may spread', { default: '0.1 stop', range: POSITIVE }),
      parameter('ratio', PLAIN, 'width over height', { default: '1', range: POSITIVE }),
    ],
    result: AREA,
    formula: 'the greatest w with field_evenness(lamps, w, w/ratio).spread ≤ limit',
    source: 'derived: bisection; the spread of a rectangle is never less than that of one inside it',
    validity: 'Centred on the origin; sampled as field_evenness is.',
    examples: [
      // One lamp 1 m above, E ∝ 1/(1 + r²)²: one stop at r² = sqrt(2) − 1; a square's corner lies at w/sqrt(2).
      { formula: 'even_area({lamp(0 m, 0 m, 1 m)}, 1 stop).width', gives: '910.1797 mm', within: '0.001 mm' },
      {
        formula: 'even_area({lamp(0 m, 0 m, 1 m)}, 1 stop, ratio: 2).height',
        gives: '575.6482 mm',
        within: '0.001 mm',
      },
      { formula: 'even_area({lamp(0 m, 0 m, 1 m)}, 0 stop)', refuses: 'limit' },
    ],
    compute: (lamps: readonly LampNumbers[], limit: number, ratio: number) => {
      needLamps(lamps)
      if (illuminanceAt(lamps, 0, 0) < DARK)
        throw new Refusal('The centre of the original is not lit: aim a lamp at it.', 'lamps')
      const width = evenWidth(lamps, limit, ratio)
      return { width, height: width / ratio }
    },
  },
  {
    name: 'intensity_from_reading',
    subject: 'lighting',
    about: 'A lamp’s candela from one lux reading.',
    parameters: [
      parameter('E', number(ILLUMINANCE), 'read facing the lamp, on its axis, with the others off', {
        range: NOT_NEGATIVE,
      }),
      positiveLength('distance', 'from the lamp to the meter'),
    ],
    result: number(LUMINOUS_INTENSITY),
    formula: 'E d²/(1 sr)',
    source: 'derived: inverse square law',
    validity: 'From farther than about five times the lamp’s size; room light subtracted.',
    safety: [HOT_LAMPS],
    examples: [
      { formula: 'intensity_from_reading(250 lx, 2 m)', gives: '1000 cd' },
      { formula: 'intensity_from_reading(250 lx, 0 m)', refuses: 'distance' },
    ],
    compute: (E: number, distance: number) => E * distance ** 2,
  },
  {
    name: 'flash_energy_for',
    subject: 'lighting',
    about: 'The flash energy for a change of light.',
    parameters: [
      parameter('energy', number(ENERGY), 'set now, in watt-seconds or joules', { range: POSITIVE }),
      parameter('shift', number(STOP), 'wanted change, positive for more light', { range: STOPS }),
    ],
    result: number(ENERGY),
    formula: 'W 2^s',
    source: 'derived: a stop is a factor of two; light taken proportional to stored energy',
    validity: 'Near the setting it was read at: efficiency and colour drift towards the ends of a unit’s scale.',
    safety: [FLASH_CAPACITORS],
    examples: [
      { formula: 'flash_energy_for(250 J, 1 stop)', gives: '500 J' },
      { formula: 'flash_energy_for(0 J, 1 stop)', refuses: 'energy' },
    ],
    compute: (energy: number, shift: number) => energy * 2 ** shift,
  },
  {
    name: 'flat_field_gain',
    subject: 'lighting',
    about: 'The gain a flat-field correction gives the dimmest point.',
    parameters: [
      parameter('spread', number(STOP), 'of the field, brightest to dimmest', { range: { least: 0, most: 100 } }),
    ],
    result: PLAIN,
    formula: '2^spread',
    source: 'derived: a stop is a factor of two',
    validity: 'Against an exposure that just holds the brightest point.',
    examples: [
      { formula: 'flat_field_gain(1 stop)', gives: '2' },
      { formula: 'flat_field_gain(-1 stop)', refuses: 'spread' },
    ],
    compute: (spread: number) => 2 ** spread,
    advise: (spread: number) =>
      spread > 0
        ? `At the dimmest point the photon noise comes out ${(2 ** (spread / 2)).toFixed(2)} times and the sensor’s own noise ${(2 ** spread).toFixed(2)} times what an even field would give.`
        : undefined,
  },
  {
    name: 'flat_field_noise',
    subject: 'lighting',
    about: 'How much photon noise a flat-field correction adds at the dimmest point.',
    parameters: [
      parameter('spread', number(STOP), 'of the field, brightest to dimmest', { range: { least: 0, most: 100 } }),
    ],
    result: PLAIN,
    formula: '2^(spread/2)',
    source: 'derived: photon noise grows as the square root of the light, the gain in proportion to its lack',
    validity: 'Noise relative to the same point fully lit, where photon noise outweighs the sensor’s own.',
    examples: [{ formula: 'flat_field_noise(2 stop)', gives: '2' }],
    compute: (spread: number) => 2 ** (spread / 2),
  },
  {
    name: 'luminance_from_lux',
    subject: 'lighting',
    about: 'The luminance of a matt surface under a given light.',
    parameters: [
      parameter('E', number(ILLUMINANCE), 'illuminance on the surface', { range: NOT_NEGATIVE }),
      parameter('reflectance', PLAIN, 'share reflected: 0.18 for a grey card', { range: SHARE }),
    ],
    result: number(LUMINANCE),
    formula: 'ρ E/π',
    source: 'derived: a uniform diffuser of luminance L gives off π L',
    validity: 'A matt surface; a glossy one depends on where the lamps stand.',
    examples: [
      { formula: 'luminance_from_lux(1000 lx, 0.18)', gives: '57.29578 [cd/m^2]', within: '0.00001 [cd/m^2]' },
      { formula: 'luminance_from_lux(1000 lx, 18)', refuses: 'reflectance' },
    ],
    compute: (E: number, reflectance: number) => (reflectance * E) / Math.PI,
  },
  {
    name: 'mask_size',
    subject: 'lighting',
    about: 'The size of a mask between a bright ceiling and a glossy original.',
    parameters: [
      positiveLength('width', 'of the original, along the same side'),
      positiveLength('lens_height', 'from the original to the entrance pupil'),
      length('mask_height', 'from the original to the mask'),
    ],
    result: number(LENGTH),
    formula: 'width (1 + z/h)',
    source: 'derived: law of reflection at the edges of the original',
    validity: 'A flat original; the mask level and centred, with a hole for the lens where it hangs below it.',
    examples: [
      { formula: 'mask_size(0.6 m, 1.2 m, 1.2 m)', gives: '1.2 m' },
      { formula: 'mask_size(0.6 m, 0 m, 1.2 m)', refuses: 'lens_height' },
    ],
    compute: (width: number, lensHeight: number, maskHeight: number) => width * (1 + maskHeight / lensHeight),
  },
  {
    name: 'place_lamps',
    subject: 'lighting',
    about: 'The nearest symmetrical pair of lamps that lights an original evenly and without glare.',
    parameters: [
      positiveLength('width', 'of the original, along the line of the lamps'),
      positiveLength('height', 'of the original, across it'),
      positiveLength('lens_height', 'from the original to the entrance pupil'),
      parameter('limit', number(STOP), 'the most the light may spread', { default: '0.1 stop', range: POSITIVE }),
      parameter('beam_angle', number(ANGLE), 'full angle between the directions of half intensity', {
        default: '120 deg',
        range: BEAM,
      }),
      length('lamp_radius', 'of the lamp’s lit face', { default: '0 mm' }),
      parameter('glossy', YES_NO, 'keep the lamps out of the mirror zone', { default: 'yes' }),
      positiveLength('reach', 'farthest a lamp may stand from the centre', { default: '3 m' }),
    ],
    result: PLACES,
    formula:
      'least hypot(X, z) with spread ≤ limit, X − r ≥ w (1 + z/h) when glossy, (z + r)/X ≤ tan 45°, aim within the field',
    source: 'derived: search over distance, elevation and aim; the 45° limit is common practice, no source',
    validity:
      'One lamp at each side on the line through the centre, alike and set alike. aim_x is where the right lamp’s axis meets the original: negative is past the centre. The left lamp mirrors it.',
    safety: [HOT_LAMPS],
    examples: [
      // A brute-force search over 1 mm steps in X and z, 5 mm in aim, finds 1.348 m.
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m).x', gives: '1348.3 mm', within: '2 mm' },
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m).aim_x', gives: '-300 mm', within: '5 mm' },
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m).met', gives: 'yes' },
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m, reach: 1 m).binding', gives: '"reach"' },
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m, limit: 0 stop)', refuses: 'limit' },
    ],
    mayBeInfinite: true,
    compute: (
      width: number,
      height: number,
      lensHeight: number,
      limit: number,
      beamAngle: number,
      lampRadius: number,
      glossy: boolean,
      reach: number,
    ) => ({ ...placePair({ width, height, lensHeight, limit, beamAngle, lampRadius, glossy, reach }) }),
  },
]

/** Tenths of a stop as a meter shows them; 0.3 can only mean three of them. */
function tenthsOf(count: number): number {
  if (Number.isInteger(count)) return count / 10
  if (count < 1) return count
  throw new Refusal('A meter shows whole tenths, 0 to 9: give 3 for three tenths, or write 0.3 stop.', 'tenths')
}
function highLamp(elevation: number): string | undefined {
  return elevation > Math.PI / 4 + 1e-9
    ? 'Over 45°: a level glossy original may mirror this lamp into the lens; check it against mirror_zone.'
    : undefined
}
