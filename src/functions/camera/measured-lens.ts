import { type FunctionRecord, number, Refusal } from '../../language/index.ts'
import { LENGTH, NONE, PIXEL } from '../../units/index.ts'
import { POSITIVE, parameter, positiveLength } from '../maths/parameters.ts'

/**
 * The diagonal by which equivalent focal lengths are computed, in metres: that of 36 × 24 mm (43.267 mm), rounded as the
 * trade rounds it.
 */
const EQUIVALENT_DIAGONAL = 43.27e-3

/** What a lens does, from its figures or from frames of a rule. */
export const MEASURED_LENS: readonly FunctionRecord[] = [
  {
    name: 'pupil_ratio',
    subject: 'close-focus',
    about: 'Pupil magnification of a lens, from both pupils measured through its ends.',
    also: ['pupil magnification', 'asymmetry'],
    parameters: [
      positiveLength('exit_pupil', 'diameter of the opening seen through the rear of the lens'),
      positiveLength('entrance_pupil', 'diameter of the opening seen through the front, at the same aperture'),
    ],
    result: number(NONE),
    formula: 'p = exit/entrance',
    source: 'definition of pupil magnification',
    validity: 'Both measured at the same aperture, from some distance along the axis.',
    examples: [
      { formula: 'pupil_ratio(18 mm, 24 mm)', gives: '0.75' },
      { formula: 'pupil_ratio(18 mm, 0 mm)', refuses: 'entrance_pupil' },
    ],
    compute: (exit: number, entrance: number) => exit / entrance,
  },
  {
    name: 'focal_from_equivalent',
    subject: 'close-focus',
    about: 'Real focal length of a small camera, such as a phone’s, from its “35 mm equivalent”.',
    also: ['35 mm equivalent', 'crop factor', 'phone lens'],
    parameters: [
      positiveLength('equivalent', 'equivalent focal length, as stated'),
      positiveLength('sensor_diagonal', 'diagonal of the sensor'),
    ],
    result: number(LENGTH),
    formula: 'f = equivalent × sensor diagonal/43.27 mm',
    source: 'common practice: equivalent by diagonal, 36 × 24 mm having 43.27 mm',
    validity: 'Makers round equivalents to whole millimetres, and some compute by the width.',
    examples: [
      { formula: 'focal_from_equivalent(26 mm, 9.8 mm)', gives: '5.889 mm', within: '0.001 mm' },
      { formula: 'focal_from_equivalent(26 mm, 0 mm)', refuses: 'sensor_diagonal' },
    ],
    compute: (equivalent: number, diagonal: number) => (equivalent * diagonal) / EQUIVALENT_DIAGONAL,
  },
  {
    name: 'field_from_ruler',
    subject: 'close-focus',
    about: 'The field a frame covers, measured from a photographed ruler: more reliable than a computed one.',
    parameters: [
      positiveLength('length', 'a length read on the ruler'),
      parameter('pixels', number(PIXEL), 'how many pixels that length covers', { range: POSITIVE }),
      parameter('frame_pixels', number(PIXEL), 'pixels across the whole frame, along the ruler', { range: POSITIVE }),
    ],
    result: number(LENGTH),
    formula: 'field = length × frame/pixels',
    source: 'derived: proportion along one line of the frame',
    validity: 'The ruler is in the plane of the original, along a side of the frame; distortion is left out.',
    examples: [
      { formula: 'field_from_ruler(300 mm, 4000 px, 6000 px)', gives: '450 mm' },
      { formula: 'field_from_ruler(300 mm, 0 px, 6000 px)', refuses: 'pixels' },
    ],
    compute: (measured: number, pixels: number, frame: number) => (measured * frame) / pixels,
    advise: (_: number, pixels: number, frame: number) =>
      pixels > frame
        ? 'The length covers more pixels than the frame has: check whether the two are swapped.'
        : undefined,
  },
  {
    name: 'focal_from_fields',
    subject: 'close-focus',
    about: 'Focal length from two frames of a ruler, the camera moved back between them.',
    parameters: [
      positiveLength('field_a', 'field of the frame taken from farther away'),
      positiveLength('field_b', 'field of the nearer frame'),
      positiveLength('moved', 'how far the lens moved back'),
      positiveLength('sensor', 'side of the sensor along the ruler'),
    ],
    result: number(LENGTH),
    formula: 'f = moved × sensor/(field a − field b)',
    source: 'derived: u = f (1 + field/sensor) at both, subtracted',
    validity:
      'Refocused at each distance, with `moved` the travel of the lens. The camera body travels less, by f times the change of magnification; left unfocused between the frames, the result is f (1 + m/p).',
    examples: [
      { formula: 'focal_from_fields(720 mm, 480 mm, 400 mm, 36 mm)', gives: '60 mm' },
      { formula: 'focal_from_fields(480 mm, 720 mm, 400 mm, 36 mm)', refuses: 'farther' },
    ],
    compute: (fieldA: number, fieldB: number, moved: number, sensor: number) => {
      if (fieldA <= fieldB)
        throw new Refusal(
          '“field_a” is not larger than “field_b”. The frame taken from farther away has the larger field: give that one first.',
          'field_a',
        )
      return (moved * sensor) / (fieldA - fieldB)
    },
  },
]
