import cie157 from '../../../shared/reference/cie-157-2004.json'
import { type FunctionRecord, number, TEXT } from '../../language/index.ts'
import { CURRENT, FORCE, ILLUMINANCE, LENGTH, LIGHT_DOSE, MASS, POWER, TIME, VOLTAGE } from '../../units/index.ts'
import { length, NOT_NEGATIVE, PLAIN, POSITIVE, parameter, positiveLength } from '../maths/parameters.ts'

const MAINS_LOAD =
  'Count everything else on the circuit too; local codes and a licensed electrician decide what it may carry.'
const OVERHEAD_CAMERA =
  'A camera above an original is tethered by a second, independent line, and the column is weighted before it is mounted.'
const LIGHT_SENSITIVE =
  'Light does lasting damage: keep lamps off between frames, and ask the custodian before any session.'

const MOMENT = number(FORCE.times(LENGTH))
const STANDARD_GRAVITY = 9.80665
const HOUR = 3600
const CONTINUOUS_SHARE = 0.8

type Responsivity = keyof typeof cie157.responsivity

/** The yearly limit of CIE 157:2004 in lux seconds; infinite where there is none. */
const yearlyLimit = (responsivity: Responsivity): number => {
  const dose = cie157.responsivity[responsivity].dose_lx_h_per_year
  return dose === null ? Number.POSITIVE_INFINITY : dose * HOUR
}

const LIMITS_QUOTED =
  'The yearly limits were read where others quote them, not in CIE 157:2004: check them there before an original depends on them.'

/** Care of the original, of people and of the room. */
export const CARE: readonly FunctionRecord[] = [
  {
    name: 'light_dose',
    subject: 'care',
    about: 'The light an original receives.',
    also: ['lux hours', 'light exposure', 'fading'],
    parameters: [
      parameter('E', number(ILLUMINANCE), 'illuminance at the original', { range: NOT_NEGATIVE }),
      parameter('time', number(TIME), 'how long it is lit, focusing and waiting included', { range: NOT_NEGATIVE }),
    ],
    result: number(LIGHT_DOSE),
    formula: 'H = E t',
    source: 'definition of luminous exposure',
    safety: [LIGHT_SENSITIVE],
    examples: [
      { formula: 'light_dose(1000 lx, 3 min)', gives: '50 [lx h]' },
      { formula: 'light_dose(1000 lx, -3 min)', refuses: 'time' },
    ],
    compute: (E: number, time: number) => E * time,
  },
  {
    name: 'flash_dose',
    subject: 'care',
    about: 'The light an original receives from flash.',
    parameters: [
      parameter('dose_per_pop', number(LIGHT_DOSE), 'read with a flash meter in lux seconds', { range: NOT_NEGATIVE }),
      parameter('pops', PLAIN, 'flashes fired, tests included', { range: { least: 0, whole: true } }),
    ],
    result: number(LIGHT_DOSE),
    formula: 'H = n H₁',
    source: 'derived: doses add',
    validity: 'Modelling lamps counted apart, with light_dose.',
    safety: [LIGHT_SENSITIVE],
    examples: [
      { formula: 'flash_dose(36 [lx s], 200)', gives: '2 [lx h]' },
      { formula: 'flash_dose(36 [lx s], 2.5)', refuses: 'pops' },
    ],
    compute: (dose: number, pops: number) => dose * pops,
  },
  {
    name: 'dose_share',
    subject: 'care',
    about: 'How much of a year’s light an original has had.',
    also: ['lux hours', 'annual exposure', 'light budget'],
    parameters: [
      parameter('dose_per_year', number(LIGHT_DOSE), 'all its light in the year, display included', {
        range: NOT_NEGATIVE,
      }),
      parameter('responsivity', TEXT, 'of the most sensitive part of the original', {
        choices: ['high', 'medium', 'low', 'none'],
      }),
    ],
    result: PLAIN,
    formula: 'H/(15 000, 150 000 or 600 000 lx h); 0 where there is no limit',
    source: 'CIE 157:2004, limiting annual exposures (figures as quoted)',
    validity: 'Light without ultraviolet; the limits slow fading down, they do not stop it.',
    safety: [LIGHT_SENSITIVE, LIMITS_QUOTED],
    examples: [
      { formula: 'dose_share(300 [lx h], "high")', gives: '2 %' },
      { formula: 'dose_share(300 [lx h], "low")', gives: '0.05 %' },
      { formula: 'dose_share(300 [lx h], "none")', gives: '0' },
      { formula: 'dose_share(300 [lx h], "very high")', refuses: 'responsivity' },
    ],
    compute: (dose: number, responsivity: Responsivity) => dose / yearlyLimit(responsivity),
    advise: (dose: number, responsivity: Responsivity) =>
      dose > yearlyLimit(responsivity) ? 'This is more than a year’s light: stop, and ask the custodian.' : undefined,
  },
  {
    name: 'lamp_current',
    subject: 'care',
    about: 'The current a lamp draws.',
    also: ['amps', 'amperes', 'power draw'],
    parameters: [
      parameter('power', number(POWER), 'drawn by the lamp and its driver', { range: NOT_NEGATIVE }),
      parameter('voltage', number(VOLTAGE), 'of the mains', { range: POSITIVE }),
      parameter('power_factor', PLAIN, 'from the driver’s plate; 1 for a filament', {
        default: '1',
        range: { above: 0, most: 1 },
      }),
    ],
    result: number(CURRENT),
    formula: 'I = P/(V pf)',
    source: 'derived: active power of a single-phase load',
    validity: 'Running; lamps, drivers and flash units draw more when switched on or charging.',
    safety: [MAINS_LOAD],
    examples: [
      { formula: 'lamp_current(1150 W, 230 V)', gives: '5 A' },
      { formula: 'lamp_current(1150 W, 230 V, 0.5)', gives: '10 A' },
      { formula: 'lamp_current(1150 W, 0 V)', refuses: 'voltage' },
    ],
    compute: (power: number, voltage: number, powerFactor: number) => power / (voltage * powerFactor),
  },
  {
    name: 'circuit_share',
    subject: 'care',
    about: 'How much of a circuit’s rating is in use.',
    also: ['breaker', 'fuse', 'mains load'],
    parameters: [
      parameter('current', number(CURRENT), 'all loads on the circuit together', { range: NOT_NEGATIVE }),
      parameter('rating', number(CURRENT), 'of the breaker or fuse', { range: POSITIVE }),
    ],
    result: PLAIN,
    formula: 'I/rating',
    source: 'derived: a ratio; continuous load of at most 80 % is common practice, no source',
    safety: [MAINS_LOAD],
    examples: [
      { formula: 'circuit_share(12 A, 16 A)', gives: '75 %' },
      { formula: 'circuit_share(12 A, 0 A)', refuses: 'rating' },
    ],
    compute: (current: number, rating: number) => current / rating,
    advise: (current: number, rating: number) =>
      current > rating * CONTINUOUS_SHARE * (1 + 1e-12)
        ? 'Over 80 % of the rating: too much for a load that stays on. Spread the lamps over circuits; local codes and a licensed electrician decide.'
        : undefined,
  },
  {
    name: 'overhang_moment',
    subject: 'care',
    about: 'The moment with which an overhanging camera tips its copy stand.',
    also: ['tipping', 'stability', 'torque'],
    parameters: [
      parameter('mass', number(MASS), 'of the camera, head and arm beyond the tipping edge', { range: NOT_NEGATIVE }),
      length('reach', 'of its centre of mass beyond the tipping edge'),
    ],
    result: MOMENT,
    formula: 'M = m g a, g = 9.80665 m/s²',
    source: 'derived: statics; standard gravity of the third CGPM, 1901',
    validity: 'At rest; a knock or a turning handle adds to it.',
    safety: [OVERHEAD_CAMERA],
    examples: [
      { formula: 'overhang_moment(3 kg, 0.5 m)', gives: '14.709975 [N m]' },
      { formula: 'overhang_moment(-3 kg, 0.5 m)', refuses: 'mass' },
    ],
    compute: (mass: number, reach: number) => mass * STANDARD_GRAVITY * reach,
  },
  {
    name: 'ballast_for',
    subject: 'care',
    about: 'The ballast that keeps a copy stand from tipping.',
    also: ['tipping', 'counterweight', 'stability'],
    parameters: [
      parameter('moment', MOMENT, 'tipping the copy stand', { range: NOT_NEGATIVE }),
      positiveLength('ballast_arm', 'from the tipping edge back to the ballast'),
      parameter('stand_mass', number(MASS), 'of the copy stand itself', { default: '0 kg', range: NOT_NEGATIVE }),
      length('stand_arm', 'from the tipping edge back to the copy stand’s centre of mass', { default: '0 m' }),
      parameter('safety', PLAIN, 'factor on the tipping moment', { default: '1.5', range: { least: 1 } }),
    ],
    result: number(MASS),
    formula: 'max(0, (safety M − m_s g a_s)/(g a_b))',
    source: 'derived: moments about the tipping edge; the safety factor of 1.5 is common practice, no source',
    validity: 'A level, firm floor, and the edge about which the copy stand would tip most easily.',
    safety: [OVERHEAD_CAMERA],
    examples: [
      // 1.5 · 3 kg · 0.5 m = 2.25 kg m; less 4 kg · 0.2 m; over 0.25 m.
      {
        formula: 'ballast_for(overhang_moment(3 kg, 0.5 m), 0.25 m, stand_mass: 4 kg, stand_arm: 0.2 m)',
        gives: '5.8 kg',
      },
      { formula: 'ballast_for(10 [N m], 0.25 m, stand_mass: 40 kg, stand_arm: 0.2 m)', gives: '0 kg' },
      { formula: 'ballast_for(10 [N m], 0 m)', refuses: 'ballast_arm' },
    ],
    compute: (moment: number, ballastArm: number, standMass: number, standArm: number, safety: number) =>
      Math.max(0, (safety * moment - standMass * STANDARD_GRAVITY * standArm) / (STANDARD_GRAVITY * ballastArm)),
  },
]
