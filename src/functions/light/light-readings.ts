import { type FunctionRecord, list, number, Refusal, record, TEXT, type Type } from '../../language/index.ts'
import { ENERGY, ILLUMINANCE, LUMINANCE, LUMINOUS_INTENSITY, NONE, STOP } from '../../units/index.ts'
import { FLASH_CAPACITORS, HOT_LAMPS, RAW_OR_LINEAR } from '../maths/cautions.ts'
import {
  F_NUMBER,
  NOT_NEGATIVE,
  PLAIN,
  POSITIVE,
  parameter,
  positiveLength,
  SHARE,
  STOPS,
} from '../maths/parameters.ts'

const BALANCE = record('shadow balance', {
  shift: number(STOP),
  stronger: TEXT,
  distance_factor: PLAIN,
  power_factor: PLAIN,
})

function positiveReadings(readings: readonly number[]): void {
  needReadings(readings)
  if (!readings.every((reading) => reading > 0))
    throw new Refusal('“readings” has one that is not above zero. Read again where the meter shows none.', 'readings')
}

function needReadings(readings: readonly number[]): void {
  if (readings.length === 0)
    throw new Refusal('“readings” is empty. List those of the field, as in {f/8, f/9}.', 'readings')
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

/** What a meter reads of the light, and its correction. */
export const LIGHT_READINGS: readonly FunctionRecord[] = [
  {
    name: 'evenness_stops',
    subject: 'lighting',
    about: 'The spread of readings taken over the field.',
    also: ['uniformity', 'evenness', 'vignetting', 'light meter readings'],
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
        throw new Refusal('“ambient” is not below both shadows. Darken the room, or read the shadows again.', 'ambient')
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
              throw new Refusal('“tenths” is of another kind. Give a plain number, 3, or stops, 0.3 stop.', 'tenths')
            return aperture * 2 ** (tenthsOf(count) / 2)
          },
  },
  {
    name: 'intensity_from_reading',
    subject: 'lighting',
    about: 'A lamp’s candela from one lux reading.',
    also: ['candela', 'lamp output'],
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
      parameter('shift', number(STOP), 'change of light, positive for more', { range: STOPS }),
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
    also: ['vignetting', 'flat fielding', 'shading correction', 'lcc'],
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
        ? `At the dimmest point the photon noise is ${(2 ** (spread / 2)).toFixed(2)} times and the sensor’s own noise ${(2 ** spread).toFixed(2)} times what an even field would give.`
        : undefined,
  },
  {
    name: 'flat_field_noise',
    subject: 'lighting',
    about: 'How much photon noise a flat-field correction adds at the dimmest point.',
    also: ['vignetting', 'noise', 'shading correction'],
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
    also: ['luminance', 'nits'],
    parameters: [
      parameter('E', number(ILLUMINANCE), 'illuminance on the surface', { range: NOT_NEGATIVE }),
      parameter('reflectance', PLAIN, 'share reflected: 0.18 for a grey card', { range: SHARE }),
    ],
    result: number(LUMINANCE),
    formula: 'ρ E/π',
    source: 'derived: a uniform diffuser of luminance L gives off π L',
    validity: 'A matt surface; a glossy one depends on where the lamps are.',
    examples: [
      { formula: 'luminance_from_lux(1000 lx, 0.18)', gives: '57.29578 [cd/m^2]', within: '0.00001 [cd/m^2]' },
      { formula: 'luminance_from_lux(1000 lx, 18)', refuses: 'reflectance' },
    ],
    compute: (E: number, reflectance: number) => (reflectance * E) / Math.PI,
  },
]

/** Tenths of a stop as a meter shows them; 0.3 can only mean three of them. */
function tenthsOf(count: number): number {
  if (Number.isInteger(count)) return count / 10
  if (count < 1) return count
  throw new Refusal(
    '“tenths” is not a whole number from 0 to 9, as a meter shows. Give 3 for three tenths, or write 0.3 stop.',
    'tenths',
  )
}
