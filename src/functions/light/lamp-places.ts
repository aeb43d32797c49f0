import { type FunctionRecord, list, number, Refusal, record, TEXT, YES_NO } from '../../language/index.ts'
import { ANGLE, LENGTH, STOP } from '../../units/index.ts'
import { BEAM, LAMP, LAMPS, needLamps } from '../lamps/lamp-parameters.ts'
import { DARK, diffuserPoints, evenWidth, illuminanceAt, type LampNumbers } from '../lamps/light-field.ts'
import { HOT_LAMPS } from '../maths/cautions.ts'
import { COUNT, length, PLAIN, POSITIVE, parameter, positiveLength, STOPS } from '../maths/parameters.ts'
import { placePair } from './place-lamps.ts'

/** Lamps are set to a millimetre at best. */
const LEAST_STEP_METRES = 1e-3

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

/** Where lamps go, and lamps of some size. */
export const LAMP_PLACES: readonly FunctionRecord[] = [
  {
    name: 'lamp_distance_for_shift',
    subject: 'lighting',
    about: 'Where to put a lamp for a change of light.',
    also: ['inverse square'],
    parameters: [
      positiveLength('distance', 'of the lamp now, along its own ray'),
      parameter('shift', number(STOP), 'change of light, positive for more', { range: STOPS }),
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
    also: ['diffuser', 'area light'],
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
      'A diffuser lit evenly, which spreads as cos θ for every beam of the bare lamp. Refine the grid until the result no longer changes: cells no wider than a third of the nearest distance.',
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
          '“height” makes the soft box reach down through the original. Raise the lamp, or give less height.',
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
      // One lamp 1 m above, E ∝ 1/(1 + r²)²: one stop at r² = sqrt(2) − 1; a square’s corner is at w/sqrt(2).
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
        throw new Refusal('“lamps” do not light the centre of the original. Aim one at it.', 'lamps')
      const width = evenWidth(lamps, limit, ratio)
      return { width, height: width / ratio }
    },
  },
  {
    name: 'mask_size',
    subject: 'lighting',
    about: 'The size of a mask between a bright ceiling and a glossy original.',
    also: ['ceiling reflection', 'glare', 'black card'],
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
    also: ['lighting set-up', 'copy lighting', '45 degrees'],
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
      positiveLength('reach', 'farthest a lamp may be from the centre', { default: '3 m' }),
      length('step', 'places and aim are multiples of it, as one sets a lamp with a rule; 0 for any place', {
        default: '0 mm',
      }),
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
      // The nearest place on whole centimetres is a few millimetres farther out, and its own figures pass.
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m, step: 10 mm).x', gives: '1350 mm', within: '15 mm' },
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m, step: 10 mm).spread <= 0.1 stop', gives: 'yes' },
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m, limit: 0 stop)', refuses: 'limit' },
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m, step: 0.1 mm)', refuses: 'step' },
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
      step: number,
    ) => {
      if (step > 0 && step < LEAST_STEP_METRES)
        throw new Refusal(
          'A “step” this fine is finer than one sets a lamp. Give 1 mm or more, or 0 for any place.',
          'step',
        )
      if (step > width / 2)
        throw new Refusal('“step” is more than half the width of the original. Give a smaller one, as 10 mm.', 'step')
      return { ...placePair({ width, height, lensHeight, limit, beamAngle, lampRadius, glossy, reach, step }) }
    },
  },
]
