import { type FunctionRecord, number, Refusal, record, TEXT, YES_NO } from '../../language/index.ts'
import { ANGLE, LENGTH, STOP } from '../../units/index.ts'
import { BEAM } from '../lamps/lamp-parameters.ts'
import { HOT_LAMPS } from '../maths/cautions.ts'
import { length, POSITIVE, parameter, positiveLength } from '../maths/parameters.ts'
import { LEAST_STEP_METRES } from './lamp-lattice.ts'
import { placePair } from './place-lamps.ts'

const PLACES = record('pair of lamps', {
  x: number(LENGTH),
  z: number(LENGTH),
  aim_x: number(LENGTH),
  spread: number(STOP),
  elevation: number(ANGLE),
  met: YES_NO,
  binding: TEXT,
})

/** Where a pair of lamps goes. */
export const NEAREST_PAIR: readonly FunctionRecord[] = [
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
      parameter('glossy', YES_NO, 'whether the lamps must stay out of the mirror zone', { default: 'yes' }),
      positiveLength('reach', 'farthest a lamp may be from the centre', { default: '3 m' }),
      length(
        'step',
        'places and aim are multiples of it, as a lamp is set with a ruler, or of 1 mm where none is within reach; 0 for any place',
        {
          default: '0 mm',
        },
      ),
      parameter('curl', number(ANGLE), 'how far the edges of a glossy original may be tilted', {
        default: '0 deg',
        range: { least: 0, below: Math.PI / 4 },
      }),
      positiveLength('highest', 'most a lamp may be above the original', { default: '1 km' }),
      length('seen', 'width of what the camera sees at a time, along the lamps; 0 for the whole original', {
        default: '0 mm',
      }),
      length('shift', 'how far the camera moves off the centre towards the lamps', { default: '0 mm' }),
    ],
    result: PLACES,
    formula:
      'least hypot(X, z) with spread ≤ limit, X − r ≥ shift + w + z tan(atan(w/h) + 2 curl) when glossy, w half of what is seen, (z + r)/X ≤ tan 45°, aim within the field',
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
      // Under 500 mm the lamps are lower and farther out.
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m, highest: 500 mm).z <= 500 mm', gives: 'yes' },
      // With edges tilted by 10° the zone is 300 mm + z tan(atan(300/1200) + 20°) wide.
      {
        formula:
          'place_lamps(0.6 m, 0.45 m, 1.2 m, curl: 10 deg).x >= 300 mm + place_lamps(0.6 m, 0.45 m, 1.2 m, curl: 10 deg).z * tan(atan(0.25) + 20 deg)',
        gives: 'yes',
      },
      // So low a camera mirrors lamps 1.4 m out; one that sees 300 mm and moves by 150 mm sees the same edge, and less above it.
      { formula: 'place_lamps(0.6 m, 0.45 m, 0.25 m, 0.2 stop).x', gives: '1412 mm', within: '2 mm' },
      {
        formula: 'place_lamps(0.6 m, 0.45 m, 0.25 m, 0.2 stop, seen: 300 mm, shift: 150 mm).x',
        gives: '915 mm',
        within: '2 mm',
      },
      { formula: 'place_lamps(0.6 m, 0.45 m, 1.2 m, curl: 50 deg)', refuses: 'curl' },
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
      curl: number,
      highest: number,
      seen: number,
      shift: number,
    ) => {
      if (step > 0 && step < LEAST_STEP_METRES)
        throw new Refusal('“step” is finer than a lamp can be set. Give 1 mm or more, or 0 for any place.', 'step')
      const field = { width, height, lensHeight, seen, shift, curl, glossy }
      return { ...placePair({ ...field, limit, beamAngle, lampRadius, reach, step, highest }) }
    },
  },
]
