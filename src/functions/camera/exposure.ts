import { type FunctionRecord, level, list, number } from '../../language/index.ts'
import { ILLUMINANCE, LUMINANCE, NONE, STOP } from '../../units/index.ts'
import { METER_C, METER_K } from '../../units/stops.ts'
import { F_NUMBER, POSITIVE, parameter, SHUTTER } from '../maths/parameters.ts'
import {
  APERTURE,
  EXPOSURE_TIME,
  MAGNIFICATION_OR_NONE,
  PUPIL_RATIO,
  SHIFT,
  SPEED,
  SPEED_OR_100,
} from './lens-parameters.ts'

const EXPOSURE_VALUE = parameter('exposure_value', level(STOP), 'exposure value at ISO 100, less the total shift', {
  range: { least: -100, most: 100 },
})
const METER_CONSTANTS = 'ISO 2720:1974'
const A_LEDGER = 'Set value = metered value − total shift: filters, extension and the like are counted before.'
const THROUGH_THE_LENS =
  'A reading through the lens already includes it: count it only with a hand-held meter or a flash meter.'
const REFLECTANCE = { range: { above: 0, most: 1 } }

/** Section 6 of the trade, first half: exposure values, meters, and the ledger of stops. */
export const EXPOSURE: readonly FunctionRecord[] = [
  {
    name: 'exposure_value',
    subject: 'exposure',
    about: 'Exposure value that camera settings are right for, referred to ISO 100.',
    also: ['ev', 'light value'],
    parameters: [APERTURE, EXPOSURE_TIME, SPEED_OR_100],
    result: level(STOP),
    formula: 'EV = log₂(N²/t) − log₂(S/100), t in s',
    source: 'ISO 2720: exposure value as log₂(N²/t)',
    examples: [
      { formula: 'exposure_value(f/8, 1/60 s)', gives: '11.906891 EV', within: '0.000001 EV' },
      { formula: 'exposure_value(f/8, 1 s, 400)', gives: '4 EV' },
      { formula: 'exposure_value(f/8, 0 s)', refuses: 'time' },
    ],
    compute: (aperture: number, time: number, speed: number) =>
      2 * Math.log2(aperture) - Math.log2(time) - Math.log2(speed / 100),
  },
  {
    name: 'exposure_value_from_lux',
    subject: 'exposure',
    about: 'Exposure value, at ISO 100, of an original lit by a measured illuminance.',
    also: ['incident reading', 'light meter', 'ev', 'incident meter'],
    parameters: [
      parameter('E', number(ILLUMINANCE), 'illuminance at the original', { range: POSITIVE }),
      parameter('constant', number(NONE), 'the meter’s constant C, its figure in lx s', {
        range: POSITIVE,
        default: `${METER_C}`,
      }),
    ],
    result: level(STOP),
    formula: 'EV = log₂(100 E/C); at C = 250, E = 2.5 lx × 2^EV',
    source: `${METER_CONSTANTS}: E S/C = N²/t, C from 240 to 400 for a flat receptor and 320 to 540 for a dome`,
    validity: 'For a flat original the receptor is flat on it, the dome down or off (common practice).',
    cautions: [
      'K = 12.5 with C = 250 takes the mid-tone to reflect 15.7 %: a reading off an 18 % card differs from it by 0.2 stop.',
    ],
    examples: [
      { formula: 'exposure_value_from_lux(2560 lx)', gives: '10 EV' },
      { formula: 'exposure_value_from_lux(2500 lx, 250)', gives: '9.965784 EV', within: '0.000001 EV' },
      { formula: 'exposure_value_from_lux(0 lx)', refuses: 'E' },
    ],
    compute: (illuminance: number, constant: number) => Math.log2((100 * illuminance) / constant),
    advise: (_: number, constant: number) =>
      constant < 240 || constant > 540
        ? 'ISO 2720 has C between 240 and 400 for a flat receptor, 320 and 540 for a dome.'
        : undefined,
  },
  {
    name: 'exposure_value_from_luminance',
    subject: 'exposure',
    about: 'Exposure value, at ISO 100, of a surface of a measured luminance.',
    also: ['spot meter', 'reflected reading', 'ev'],
    parameters: [
      parameter('L', number(LUMINANCE), 'luminance of the surface metered', { range: POSITIVE }),
      parameter('constant', number(NONE), 'the meter’s constant K, its figure in cd s/m²', {
        range: POSITIVE,
        default: `${METER_K}`,
      }),
    ],
    result: level(STOP),
    formula: 'EV = log₂(100 L/K)',
    source: `${METER_CONSTANTS}: L S/K = N²/t, K from 10.6 to 13.4`,
    validity: 'Renders the surface metered as a mid-tone, however much it reflects: reflectance_shift corrects that.',
    examples: [
      { formula: 'exposure_value_from_luminance(128 [cd/m^2])', gives: '10 EV' },
      { formula: 'exposure_value_from_luminance(0 [cd/m^2])', refuses: 'L' },
    ],
    compute: (luminance: number, constant: number) => Math.log2((100 * luminance) / constant),
    advise: (_: number, constant: number) =>
      constant < 10.6 || constant > 13.4 ? 'ISO 2720 has K between 10.6 and 13.4.' : undefined,
  },
  {
    name: 'time_for',
    subject: 'exposure',
    about: 'Exposure time for an exposure value and an aperture.',
    also: ['shutter speed', 'exposure time'],
    parameters: [EXPOSURE_VALUE, APERTURE, SPEED],
    result: SHUTTER,
    formula: 't = N² 2^(−EV) × 100/S, in s',
    source: 'ISO 2720: exposure value as log₂(N²/t), solved for t',
    validity: A_LEDGER,
    examples: [
      { formula: 'time_for(12 EV, f/8, 100)', gives: '1/64 s' },
      { formula: 'time_for(12 EV, f/8, 0)', refuses: 'speed' },
    ],
    compute: (exposureValue: number, aperture: number, speed: number) =>
      ((aperture * aperture) / 2 ** exposureValue) * (100 / speed),
  },
  {
    name: 'aperture_for',
    subject: 'exposure',
    about: 'f-number for an exposure value and an exposure time.',
    also: ['f-stop', 'f-number'],
    parameters: [EXPOSURE_VALUE, EXPOSURE_TIME, SPEED],
    result: F_NUMBER,
    formula: 'N = √(t 2^EV S/100), t in s',
    source: 'ISO 2720: exposure value as log₂(N²/t), solved for N',
    validity: A_LEDGER,
    examples: [
      { formula: 'aperture_for(12 EV, 1/64 s, 100)', gives: 'f/8' },
      { formula: 'aperture_for(12 EV, 0 s, 100)', refuses: 'time' },
    ],
    compute: (exposureValue: number, time: number, speed: number) =>
      Math.sqrt(time * 2 ** exposureValue * (speed / 100)),
  },
  {
    name: 'extension_factor',
    subject: 'exposure',
    about: 'Factor by which the exposure grows as the lens moves out to focus up close.',
    also: ['bellows factor', 'bellows extension', 'exposure factor', 'close-up exposure'],
    parameters: [MAGNIFICATION_OR_NONE, PUPIL_RATIO],
    result: number(NONE),
    formula: '(1 + m/p)²',
    source: 'derived: (effective over marked aperture)²; also in Ray, Applied Photographic Optics',
    cautions: [THROUGH_THE_LENS, 'The magnification of a close-up lens does not count here.'],
    examples: [
      { formula: 'extension_factor(1:1)', gives: '4' },
      { formula: 'extension_factor(1:2)', gives: '2.25' },
      { formula: 'extension_factor(-1)', refuses: 'magnification' },
    ],
    compute: (magnification: number, pupilRatio: number) => (1 + magnification / pupilRatio) ** 2,
  },
  {
    name: 'extension_shift',
    subject: 'exposure',
    about: 'Extra exposure, in stops, as the lens moves out to focus up close.',
    also: ['bellows factor', 'bellows compensation', 'exposure compensation', 'close-up exposure'],
    parameters: [MAGNIFICATION_OR_NONE, PUPIL_RATIO],
    result: number(STOP),
    formula: '2 log₂(1 + m/p)',
    source: 'derived: log₂ of extension_factor',
    cautions: [THROUGH_THE_LENS, 'The magnification of a close-up lens does not count here.'],
    examples: [
      { formula: 'extension_shift(1:1)', gives: '2 stop' },
      { formula: 'extension_shift(1:4)', gives: '0.643856 stop', within: '0.000001 stop' },
      { formula: 'extension_shift(-1)', refuses: 'magnification' },
    ],
    compute: (magnification: number, pupilRatio: number) => 2 * Math.log2(1 + magnification / pupilRatio),
  },
  {
    name: 'reflectance_shift',
    subject: 'exposure',
    about: 'Shift from a reading off one surface to the exposure meant for another.',
    also: ['grey card', 'gray card', 'exposure compensation', 'white paper'],
    parameters: [
      parameter('metered', number(NONE), 'reflectance of the surface metered', REFLECTANCE),
      parameter('intended', number(NONE), 'reflectance the exposure is meant for', REFLECTANCE),
    ],
    result: number(STOP),
    formula: 'log₂(metered/intended)',
    source: 'derived: a meter gives every surface the same image exposure',
    examples: [
      { formula: 'reflectance_shift(90 %, 18 %)', gives: '2.321928 stop', within: '0.000001 stop' },
      { formula: 'reflectance_shift(0, 18 %)', refuses: 'metered' },
    ],
    compute: (metered: number, intended: number) => Math.log2(metered / intended),
  },
  {
    name: 'shift_time',
    subject: 'exposure',
    about: 'Exposure time, shifted by stops.',
    also: ['exposure compensation', 'shutter speed'],
    parameters: [EXPOSURE_TIME, SHIFT],
    result: SHUTTER,
    formula: 't × 2^shift',
    source: 'definition of a stop: a factor of 2 in exposure',
    validity: 'Continuous light. The time changes the light of a flash very little.',
    examples: [
      { formula: 'shift_time(1/64 s, 2 stop)', gives: '1/16 s' },
      { formula: 'shift_time(0 s, 2 stop)', refuses: 'time' },
    ],
    compute: (time: number, shift: number) => time * 2 ** shift,
  },
  {
    name: 'shift_aperture',
    subject: 'exposure',
    about: 'f-number, shifted by stops: more exposure opens the lens.',
    also: ['exposure compensation', 'stop down'],
    parameters: [APERTURE, SHIFT],
    result: F_NUMBER,
    formula: 'N × 2^(−shift/2)',
    source: 'definition of a stop: exposure is in proportion to 1/N²',
    examples: [
      { formula: 'shift_aperture(f/8, 2 stop)', gives: 'f/4' },
      { formula: 'shift_aperture(0, 2 stop)', refuses: 'aperture' },
    ],
    compute: (aperture: number, shift: number) => aperture * 2 ** (-shift / 2),
  },
  {
    name: 'total_shift',
    subject: 'exposure',
    about: 'All the shifts of an exposure together.',
    also: ['exposure compensation'],
    parameters: [parameter('list', list(number(STOP)), 'the shifts, each positive for more exposure')],
    result: number(STOP),
    formula: 'sum of the shifts',
    source: 'definition of a stop: factors multiply, stops add',
    examples: [
      { formula: 'total_shift({2 stop, 2/3 stop, -1 stop})', gives: '1.66666666666667 stop', within: '1e-12 stop' },
    ],
    compute: (shifts: readonly number[]) => shifts.reduce((sum, shift) => sum + shift, 0),
  },
]
