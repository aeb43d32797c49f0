import { type FunctionRecord, list, number, Refusal, record } from '../../language/index.ts'
import { LENGTH, STOP } from '../../units/index.ts'
import { LAMP, LAMPS, needLamps } from '../lamps/lamp-parameters.ts'
import { DARK, diffuserPoints, illuminanceAt, type LampNumbers } from '../lamps/light-field.ts'
import { HOT_LAMPS } from '../maths/cautions.ts'
import { COUNT, length, PLAIN, POSITIVE, parameter, positiveLength, STOPS } from '../maths/parameters.ts'
import { evenWidth } from './even-width.ts'

const AREA = record('even area', { width: number(LENGTH), height: number(LENGTH) })

/** Lamps of some size, several together, and what they light evenly. */
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
]
