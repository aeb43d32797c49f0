import { type FunctionRecord, list, number, Refusal, record } from '../../language/index.ts'
import { ENERGY, FREQUENCY, LENGTH, NONE, STOP, TIME } from '../../units/index.ts'
import {
  ceilGuarded,
  EXPOSURE_TIME,
  MAGNIFICATION_OR_NONE,
  PUPIL_RATIO,
  SPEED_OR_100,
} from '../camera/lens-parameters.ts'
import { FLASH_CAPACITORS } from '../maths/cautions.ts'
import { F_NUMBER, NOT_NEGATIVE, POSITIVE, parameter, positiveLength, SHUTTER } from '../maths/parameters.ts'

const LIGHT_FREQUENCY = parameter(
  'frequency',
  number(FREQUENCY),
  'of the light’s own flicker: twice the mains frequency for lamps on the mains',
  { range: POSITIVE },
)
const MOST_TIMES = 1000
const MOST_POPS_SHIFT = 20

/** Flash, flicker, and long times. */
export const FLASH_AND_TIME: readonly FunctionRecord[] = [
  {
    name: 'guide_aperture',
    subject: 'exposure',
    about: 'f-number to set on the lens for a flash of a given guide number.',
    also: ['guide number', 'flash'],
    parameters: [
      parameter('guide_number', number(LENGTH), 'guide number at ISO 100, a length', { range: POSITIVE }),
      positiveLength('distance', 'from the flash to the original'),
      SPEED_OR_100,
      { ...MAGNIFICATION_OR_NONE, default: '0' },
      PUPIL_RATIO,
    ],
    result: F_NUMBER,
    formula: 'N = (GN/d) √(S/100)/(1 + m/p)',
    source: 'ISO 1230: guide number = f-number × distance; the extension derived as for effective_aperture',
    validity: 'A flash small compared with its distance, square to the original, in a room of ordinary size.',
    cautions: ['A flash from an angle, or through a diffuser, gives less: meter it.'],
    safety: [FLASH_CAPACITORS],
    examples: [
      { formula: 'guide_aperture(32 m, 4 m)', gives: 'f/8' },
      { formula: 'guide_aperture(32 m, 2 m, 400, 1:1)', gives: 'f/16' },
      { formula: 'guide_aperture(32 m, 0 m)', refuses: 'distance' },
    ],
    compute: (guideNumber: number, distance: number, speed: number, magnification: number, pupilRatio: number) =>
      ((guideNumber / distance) * Math.sqrt(speed / 100)) / (1 + magnification / pupilRatio),
  },
  {
    name: 'flash_energy_shift',
    subject: 'exposure',
    about: 'Shift, in stops, from one flash energy to another.',
    also: ['flash power', 'watt seconds'],
    parameters: [
      parameter('from', number(ENERGY), 'energy set now', { range: POSITIVE }),
      parameter('to', number(ENERGY), 'energy to be set', { range: POSITIVE }),
    ],
    result: number(STOP),
    formula: 'log₂(to/from)',
    source: 'derived: light in proportion to the stored energy',
    validity: 'The same flash head; its efficiency changes a little with its setting.',
    safety: [FLASH_CAPACITORS],
    examples: [
      { formula: 'flash_energy_shift(100 J, 400 J)', gives: '2 stop' },
      { formula: 'flash_energy_shift(0 J, 400 J)', refuses: 'from' },
    ],
    compute: (from: number, to: number) => Math.log2(to / from),
  },
  {
    name: 'flash_pops',
    subject: 'exposure',
    about: 'How many flashes in one open exposure add up to a shift.',
    also: ['multiple flash', 'multi pop'],
    parameters: [
      parameter('shift', number(STOP), 'stops needed beyond one flash', {
        range: { least: -100, most: MOST_POPS_SHIFT },
      }),
    ],
    result: number(NONE),
    formula: 'max(1, ⌈2^shift⌉)',
    source: 'derived: n equal flashes add log₂ n stops',
    validity: 'A dark room, and nothing that moves between the flashes.',
    cautions: ['Let the flash recharge and cool between pops.'],
    safety: [FLASH_CAPACITORS],
    examples: [
      { formula: 'flash_pops(2 stop)', gives: '4' },
      { formula: 'flash_pops(1.5 stop)', gives: '3' },
      { formula: 'flash_pops(-1 stop)', gives: '1' },
      { formula: 'flash_pops(40 stop)', refuses: 'shift' },
    ],
    compute: (shift: number) => Math.max(1, ceilGuarded(2 ** shift)),
  },
  {
    name: 'reciprocity_time',
    subject: 'exposure',
    about: 'Exposure time for a film that loses speed in long exposures.',
    also: ['reciprocity failure', 'schwarzschild'],
    parameters: [
      parameter('metered', SHUTTER, 'time the meter asks for', { range: POSITIVE }),
      parameter('exponent', number(NONE), 'from the film’s data sheet', { range: { least: 1, most: 3 } }),
      parameter('threshold', number(TIME), 'time up to which the film keeps its speed', {
        range: POSITIVE,
        default: '1 s',
      }),
    ],
    result: SHUTTER,
    formula: 't, and past the threshold: threshold (t/threshold)^exponent',
    source: 'common practice: a power law fitted to the film’s data sheet (Schwarzschild’s form)',
    validity: 'Film only; sensors need no such correction.',
    examples: [
      { formula: 'reciprocity_time(10 s, 1.3)', gives: '19.952623 s', within: '0.000001 s' },
      { formula: 'reciprocity_time(1/2 s, 1.3)', gives: '0.5 s' },
      { formula: 'reciprocity_time(10 s, 0.9)', refuses: 'exponent' },
    ],
    compute: (metered: number, exponent: number, threshold: number) =>
      metered <= threshold ? metered : threshold * (metered / threshold) ** exponent,
  },
  {
    name: 'flicker_ripple',
    subject: 'exposure',
    about: 'Greatest difference between two frames that a flickering light can make.',
    also: ['flicker', 'banding', 'led flicker'],
    parameters: [
      EXPOSURE_TIME,
      LIGHT_FREQUENCY,
      parameter('modulation', number(NONE), 'depth of the flicker, (max − min)/(max + min)', {
        range: { least: 0, below: 1 },
      }),
    ],
    result: number(STOP),
    formula: 'log₂((1 + a)/(1 − a)), a = M |sin(π F t)|/(π F t)',
    source: 'derived: the mean of 1 + M cos over a time t, at its best and its worst start',
    validity: 'Light that swings as a sine; every part of the frame exposed for the same length of time.',
    cautions: ['LED drivers differ, and dimmed ones may flicker deeply and fast: test frames decide.'],
    examples: [
      { formula: 'flicker_ripple(1/100 s, 100 Hz, 0.3)', gives: '0 stop' },
      { formula: 'flicker_ripple(1/200 s, 100 Hz, 0.3)', gives: '0.557920 stop', within: '0.000001 stop' },
      { formula: 'flicker_ripple(1/200 s, 100 Hz, 1)', refuses: 'modulation' },
    ],
    compute: (time: number, frequency: number, modulation: number) => {
      const periods = frequency * time
      const beyond = Math.abs(periods - Math.round(periods))
      // Whole periods hide the flicker exactly, though rounding may leave F t a little off the whole.
      if (periods >= 0.5 && beyond <= 1e-12 * periods) return 0
      const a = periods < 1e-9 ? modulation : (modulation * Math.sin(Math.PI * beyond)) / (Math.PI * periods)
      return Math.log2((1 + a) / (1 - a))
    },
  },
  {
    name: 'steady_times',
    subject: 'exposure',
    about: 'Exposure times that hide a flicker: whole numbers of its periods.',
    also: ['flicker', 'banding', 'mains frequency'],
    parameters: [LIGHT_FREQUENCY, parameter('longest', SHUTTER, 'longest time to list', { range: POSITIVE })],
    result: list(SHUTTER),
    formula: 'k/F for k = 1, 2, 3 … up to the longest',
    source: 'derived: the mean over whole periods does not depend on where they start',
    examples: [
      { formula: 'steady_times(100 Hz, 1/20 s)', gives: '{10 ms, 20 ms, 30 ms, 40 ms, 50 ms}' },
      { formula: 'steady_times(100 Hz, 1/200 s)', refuses: 'shorter than one period' },
    ],
    compute: (frequency: number, longest: number) => {
      const periods = longest * frequency
      const count = Math.floor(periods + 1e-9 * Math.max(1, periods))
      if (count < 1)
        throw new Refusal(
          `“longest” is shorter than one period of the flicker, so no time hides it. Allow at least 1/${+frequency.toPrecision(4)} s.`,
          'longest',
        )
      if (count > MOST_TIMES)
        throw new Refusal(
          `“longest” would give more than ${MOST_TIMES} times. Give a shorter one; times this long hide the flicker anyway.`,
          'longest',
        )
      return Array.from({ length: count }, (_, i) => (i + 1) / frequency)
    },
  },
  {
    name: 'ambient_share',
    subject: 'exposure',
    about: 'Share of the room’s light in a frame lit by flash, and the shift when the room goes dark.',
    also: ['ambient light', 'stray light'],
    parameters: [
      parameter('ambient', { kind: 'any' }, 'reading with the flash off', { range: NOT_NEGATIVE }),
      parameter('total', { kind: 'any' }, 'the same reading with the flash', { range: POSITIVE }),
    ],
    result: record('ambient share', { share: number(NONE), shift: number(STOP) }),
    formula: 'share = ambient/total; shift = −log₂(1 − share)',
    source: 'derived: light adds',
    validity:
      'Both readings over the same exposure time and linear in light: lx s, or linear pixel values; not f-numbers or stops.',
    safety: [FLASH_CAPACITORS],
    examples: [
      { formula: 'ambient_share(5 [lx s], 40 [lx s]).share', gives: '0.125' },
      { formula: 'ambient_share(5 [lx s], 40 [lx s]).shift', gives: '0.192645 stop', within: '0.000001 stop' },
      { formula: 'ambient_share(40 [lx s], 40 [lx s])', refuses: 'flash adds nothing' },
    ],
    warn: (args) =>
      args.some((type) => type.kind === 'number' && (type.dimension === STOP || type.notation === 'f-number'))
        ? 'These readings are in stops or f-numbers; their share needs readings linear in light, such as lx s.'
        : undefined,
    compute: (ambient: number, total: number) => {
      if (ambient >= total)
        throw new Refusal(
          '“ambient” is not below “total”, so the flash adds nothing to the room’s light. Check whether the two readings are swapped.',
          'ambient',
        )
      return { share: ambient / total, shift: -Math.log2(1 - ambient / total) + 0 }
    },
  },
]
