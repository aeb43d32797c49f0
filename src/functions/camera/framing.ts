import { type FunctionRecord, number, Refusal, record, YES_NO } from '../../language/index.ts'
import { LENGTH, NONE, PIXEL } from '../../units/index.ts'
import { length, POSITIVE, parameter, positiveLength, RATIO } from '../maths/parameters.ts'
import {
  FOCAL,
  inMillimetres,
  MAGNIFICATION,
  MAGNIFICATION_OR_NONE,
  MOVES_AS_A_WHOLE,
  PRINCIPAL_GAP,
  PUPIL_RATIO,
} from './lens-parameters.ts'

/**
 * The diagonal by which equivalent focal lengths are reckoned, in m: that of 36 × 24 mm (43.267 mm), rounded as the
 * trade rounds it.
 */
const EQUIVALENT_DIAGONAL = 43.27e-3

const CONJUGATES = 'derived: 1/u + 1/v = 1/f with m = v/u (Gauss)'

const SIZE = record('size', { width: number(LENGTH), height: number(LENGTH) })

/** Section 2 of the trade: the size on the sensor, and the column. */
export const FRAMING: readonly FunctionRecord[] = [
  {
    name: 'size',
    subject: 'close-focus',
    about: 'A size from its width and its height.',
    parameters: [positiveLength('width', 'width'), positiveLength('height', 'height')],
    result: SIZE,
    formula: 'width × height',
    source: 'definition',
    examples: [
      { formula: 'size(420 mm, 297 mm).height', gives: '297 mm' },
      { formula: 'size(0 mm, 297 mm)', refuses: 'width' },
    ],
    compute: (width: number, height: number) => ({ width, height }),
  },
  {
    name: 'magnification_for',
    subject: 'close-focus',
    about: 'Magnification that images one size as another, in one direction.',
    parameters: [
      positiveLength('image_size', 'size at the sensor'),
      positiveLength('original_size', 'size of the original, along the same direction'),
    ],
    result: RATIO,
    formula: 'm = image/original',
    source: 'definition of lateral magnification',
    examples: [
      { formula: 'magnification_for(36 mm, 720 mm)', gives: '1:20' },
      { formula: 'magnification_for(36 mm, 0 mm)', refuses: 'original_size' },
    ],
    compute: (image: number, original: number) => image / original,
  },
  {
    name: 'fit_magnification',
    subject: 'close-focus',
    about: 'Largest magnification at which the whole original, with a border all round, fits the sensor.',
    parameters: [
      positiveLength('original_width', 'width of the original'),
      positiveLength('original_height', 'height of the original'),
      positiveLength('sensor_width', 'width of the sensor'),
      positiveLength('sensor_height', 'height of the sensor'),
      length('border', 'left free on each side, at the original', { default: '0 mm' }),
      parameter('turn', YES_NO, 'may the original be turned by a quarter', { default: 'yes' }),
    ],
    result: RATIO,
    formula: 'm = min(sw/(w + 2b), sh/(h + 2b)), the larger of both ways round',
    source: 'derived: each side of the original must fit; the one that fills its side first binds',
    examples: [
      { formula: 'fit_magnification(594 mm, 420 mm, 36 mm, 24 mm, 3 mm)', gives: '0.0563380281690', within: '1e-12' },
      { formula: 'fit_magnification(420 mm, 594 mm, 36 mm, 24 mm, 3 mm)', gives: '0.0563380281690', within: '1e-12' },
      { formula: 'fit_magnification(420 mm, 594 mm, 36 mm, 24 mm, 3 mm, no)', gives: '0.04' },
    ],
    compute: (
      width: number,
      height: number,
      sensorWidth: number,
      sensorHeight: number,
      border: number,
      turn: boolean,
    ) => {
      const w = width + 2 * border
      const h = height + 2 * border
      const asItLies = Math.min(sensorWidth / w, sensorHeight / h)
      return turn ? Math.max(asItLies, Math.min(sensorWidth / h, sensorHeight / w)) : asItLies
    },
  },
  {
    name: 'magnification_from_track',
    subject: 'close-focus',
    about: 'Magnification from the distance between original and sensor, as read off the column.',
    parameters: [FOCAL, positiveLength('original_to_sensor', 'from the original to the sensor'), PRINCIPAL_GAP],
    result: RATIO,
    formula: 's = (T − gap)/f − 2; m = (s − √(s² − 4))/2',
    source: 'derived: T = f (2 + m + 1/m) + gap solved for m',
    validity: MOVES_AS_A_WHOLE,
    cautions: [
      'Two settings of the lens are sharp at each distance: this one, at life size or smaller, and its reciprocal, larger than life.',
    ],
    examples: [
      { formula: 'magnification_from_track(60 mm, 375 mm)', gives: '1:4' },
      { formula: 'magnification_from_track(100 mm, 400 mm)', gives: '1:1' },
      { formula: 'magnification_from_track(60 mm, 200 mm)', refuses: 'cannot be focused' },
    ],
    compute: (focal: number, track: number, gap: number) => {
      const s = (track - gap) / focal - 2
      if (s < 2 - 1e-12)
        throw new Refusal(
          `This distance cannot be focused: a ${inMillimetres(focal)} lens needs at least four focal lengths from original to sensor, ${inMillimetres(4 * focal + gap)} here. Raise the camera or take a shorter lens.`,
          'original_to_sensor',
        )
      // (s − √(s² − 4))/2, without its loss of digits where the camera is far off.
      return 2 / (s + Math.sqrt(Math.max(0, s * s - 4)))
    },
  },
  {
    name: 'field_size',
    subject: 'close-focus',
    about: 'What a side of the sensor takes in at the original.',
    parameters: [positiveLength('sensor_size', 'a side, or the diagonal, of the sensor'), MAGNIFICATION],
    result: number(LENGTH),
    formula: 'field = sensor/m',
    source: 'definition of lateral magnification',
    examples: [
      { formula: 'field_size(36 mm, 1:20)', gives: '720 mm' },
      { formula: 'field_size(36 mm, 0)', refuses: 'magnification' },
    ],
    compute: (sensor: number, magnification: number) => sensor / magnification,
  },
  {
    name: 'lens_to_original',
    subject: 'close-focus',
    about: 'Distance from the front principal plane to the original.',
    parameters: [FOCAL, MAGNIFICATION],
    result: number(LENGTH),
    formula: 'u = f (1 + 1/m)',
    source: CONJUGATES,
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'lens_to_original(60 mm, 1:4)', gives: '300 mm' },
      { formula: 'lens_to_original(0 mm, 1:4)', refuses: 'focal' },
    ],
    compute: (focal: number, magnification: number) => focal * (1 + 1 / magnification),
  },
  {
    name: 'lens_to_sensor',
    subject: 'close-focus',
    about: 'Distance from the rear principal plane to the sensor.',
    parameters: [FOCAL, MAGNIFICATION_OR_NONE],
    result: number(LENGTH),
    formula: 'v = f (1 + m)',
    source: CONJUGATES,
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'lens_to_sensor(60 mm, 1:4)', gives: '75 mm' },
      { formula: 'lens_to_sensor(60 mm, -1)', refuses: 'magnification' },
    ],
    compute: (focal: number, magnification: number) => focal * (1 + magnification),
  },
  {
    name: 'original_to_sensor',
    subject: 'close-focus',
    about: 'Distance from the original to the sensor.',
    parameters: [FOCAL, MAGNIFICATION, PRINCIPAL_GAP],
    result: number(LENGTH),
    formula: 'T = f (2 + m + 1/m) + gap; least at m = 1, where it is 4 f + gap',
    source: CONJUGATES,
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'original_to_sensor(60 mm, 1:4)', gives: '375 mm' },
      { formula: 'original_to_sensor(100 mm, 1:1, 5 mm)', gives: '405 mm' },
      { formula: 'original_to_sensor(100 mm, 0)', refuses: 'magnification' },
    ],
    compute: (focal: number, magnification: number, gap: number) =>
      focal * (2 + magnification + 1 / magnification) + gap,
  },
  {
    name: 'magnification_at',
    subject: 'close-focus',
    about: 'Magnification of an original at a given distance from the front principal plane.',
    parameters: [FOCAL, positiveLength('original_distance', 'from the front principal plane to the original')],
    result: RATIO,
    formula: 'm = f/(u − f)',
    source: CONJUGATES,
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'magnification_at(60 mm, 300 mm)', gives: '1:4' },
      { formula: 'magnification_at(60 mm, 60 mm)', refuses: 'no real image' },
    ],
    compute: (focal: number, distance: number) => {
      if (distance <= focal)
        throw new Refusal(
          `At ${inMillimetres(distance)}, within the focal length of ${inMillimetres(focal)}, no real image forms. Move the original farther than the focal length.`,
          'original_distance',
        )
      return focal / (distance - focal)
    },
  },
  {
    name: 'clear_distance',
    subject: 'close-focus',
    about: 'Room between the front of the lens and the original, for lamps and hands.',
    parameters: [
      FOCAL,
      MAGNIFICATION,
      parameter(
        'principal_inset',
        number(LENGTH),
        'from the front rim or hood back to the front principal plane; negative where the plane lies in front of the rim',
      ),
    ],
    result: number(LENGTH),
    formula: 'f (1 + 1/m) − inset',
    source: CONJUGATES,
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'clear_distance(60 mm, 1:4, 45 mm)', gives: '255 mm' },
      { formula: 'clear_distance(28 mm, 2, 45 mm)', refuses: 'touch' },
    ],
    compute: (focal: number, magnification: number, inset: number) => {
      const clear = focal * (1 + 1 / magnification) - inset
      if (clear < 0)
        throw new Refusal(
          `The lens would touch the original: ${inMillimetres(-clear)} are wanting. Take a longer lens or a smaller magnification, or take the hood off.`,
          'magnification',
        )
      return clear
    },
  },
  {
    name: 'column_height',
    subject: 'close-focus',
    about: 'Where to set the carriage on the column, its scale being zero at the baseboard.',
    parameters: [
      positiveLength('original_to_sensor', 'from the original to the sensor'),
      parameter(
        'sensor_to_carriage',
        number(LENGTH),
        'from the sensor up to the mark on the carriage; negative where the mark is below the sensor',
        { default: '0 mm' },
      ),
      length('original_thickness', 'how far the face of the original stands above the baseboard', { default: '0 mm' }),
    ],
    result: number(LENGTH),
    formula: 'T + offset + thickness',
    source: 'derived: lengths along the column added up',
    examples: [
      { formula: 'column_height(375 mm, 40 mm, 12 mm)', gives: '427 mm' },
      { formula: 'column_height(375 mm, -400 mm)', refuses: 'baseboard' },
    ],
    compute: (track: number, toCarriage: number, thickness: number) => {
      const height = track + toCarriage + thickness
      if (height < 0)
        throw new Refusal(
          `The carriage mark would lie ${inMillimetres(-height)} under the baseboard. Check the sign: positive where the mark is above the sensor.`,
          'sensor_to_carriage',
        )
      return height
    },
  },
  {
    name: 'entrance_distance',
    subject: 'close-focus',
    about: 'Distance from the entrance pupil to the original: the distance of perspective and of evenness.',
    parameters: [FOCAL, MAGNIFICATION, PUPIL_RATIO],
    result: number(LENGTH),
    formula: 'f (1/m + 1/p)',
    source:
      'derived: the pupils are images of each other at magnification p, so the entrance pupil lies f (1 − 1/p) from the front principal plane',
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'entrance_distance(60 mm, 1:4)', gives: '300 mm' },
      { formula: 'entrance_distance(60 mm, 1:4, 0.8)', gives: '315 mm' },
      { formula: 'entrance_distance(60 mm, 0)', refuses: 'magnification' },
    ],
    compute: (focal: number, magnification: number, pupilRatio: number) => focal * (1 / magnification + 1 / pupilRatio),
  },
  {
    name: 'exit_distance',
    subject: 'close-focus',
    about:
      'The distance of perspective on the sensor side: from it the image is seen under the angles the lens sees the original under.',
    parameters: [FOCAL, MAGNIFICATION_OR_NONE, PUPIL_RATIO],
    result: number(LENGTH),
    formula: 'f (1 + m/p)',
    source: 'derived: m times the entrance distance f (1/m + 1/p)',
    validity: MOVES_AS_A_WHOLE,
    cautions: [
      'The angles are those on the original’s side. The exit pupil itself lies p times as far from the sensor: exit_pupil_distance gives that.',
    ],
    examples: [
      { formula: 'exit_distance(60 mm, 1:4)', gives: '75 mm' },
      { formula: 'exit_distance(60 mm, 1:4, 0.8)', gives: '78.75 mm' },
      { formula: 'exit_distance(60 mm, 1:4, 0)', refuses: 'pupil_ratio' },
    ],
    compute: (focal: number, magnification: number, pupilRatio: number) => focal * (1 + magnification / pupilRatio),
  },
  {
    name: 'exit_pupil_distance',
    subject: 'close-focus',
    about: 'Distance from the exit pupil to the sensor: it sets how steeply light meets the corners.',
    parameters: [FOCAL, MAGNIFICATION_OR_NONE, PUPIL_RATIO],
    result: number(LENGTH),
    formula: 'f (p + m)',
    source: 'derived: the exit pupil lies f (1 − p) behind the rear principal plane, the sensor f (1 + m)',
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'exit_pupil_distance(60 mm, 1:4)', gives: '75 mm' },
      { formula: 'exit_pupil_distance(60 mm, 1:4, 0.8)', gives: '63 mm' },
      { formula: 'exit_pupil_distance(60 mm, 1:4, 0)', refuses: 'pupil_ratio' },
    ],
    compute: (focal: number, magnification: number, pupilRatio: number) => focal * (pupilRatio + magnification),
  },
  {
    name: 'scale_change',
    subject: 'close-focus',
    about: 'How much larger a part of the original is drawn that stands above the plane in focus.',
    parameters: [
      parameter('height', number(LENGTH), 'above the plane in focus; negative for a part below it'),
      positiveLength('entrance_distance', 'from the entrance pupil to the plane in focus'),
    ],
    result: number(NONE),
    formula: 'u/(u − z)',
    source: 'derived: central projection from the entrance pupil',
    examples: [
      { formula: 'scale_change(10 mm, 500 mm)', gives: '1.0204081632653', within: '1e-12' },
      { formula: 'scale_change(-10 mm, 500 mm)', gives: '0.9803921568627', within: '1e-12' },
      { formula: 'scale_change(500 mm, 500 mm)', refuses: 'entrance pupil' },
    ],
    compute: (height: number, distance: number) => {
      if (height >= distance)
        throw new Refusal(
          `A part ${inMillimetres(height)} high would reach the entrance pupil, ${inMillimetres(distance)} away. Raise the camera.`,
          'height',
        )
      return distance / (distance - height)
    },
  },
  {
    name: 'pupil_ratio',
    subject: 'close-focus',
    about: 'Pupil magnification of a lens, from both pupils measured through its ends.',
    parameters: [
      positiveLength('exit_pupil', 'diameter of the opening seen through the rear of the lens'),
      positiveLength('entrance_pupil', 'diameter of the opening seen through the front, at the same aperture'),
    ],
    result: number(NONE),
    formula: 'p = exit/entrance',
    source: 'definition of pupil magnification',
    validity: 'Both measured at the same aperture, from some way off along the axis.',
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
    parameters: [
      positiveLength('equivalent', 'equivalent focal length, as stated'),
      positiveLength('sensor_diagonal', 'diagonal of the sensor'),
    ],
    result: number(LENGTH),
    formula: 'f = equivalent × sensor diagonal/43.27 mm',
    source: 'common practice: equivalent by diagonal, 36 × 24 mm having 43.27 mm',
    validity: 'Makers round equivalents to whole millimetres, and some reckon by the width.',
    examples: [
      { formula: 'focal_from_equivalent(26 mm, 9.8 mm)', gives: '5.889 mm', within: '0.001 mm' },
      { formula: 'focal_from_equivalent(26 mm, 0 mm)', refuses: 'sensor_diagonal' },
    ],
    compute: (equivalent: number, diagonal: number) => (equivalent * diagonal) / EQUIVALENT_DIAGONAL,
  },
  {
    name: 'field_from_ruler',
    subject: 'close-focus',
    about: 'The field a frame takes in, from a photographed rule: measured beats computed.',
    parameters: [
      positiveLength('length', 'a length read on the rule'),
      parameter('pixels', number(PIXEL), 'how many pixels that length covers', { range: POSITIVE }),
      parameter('frame_pixels', number(PIXEL), 'pixels across the whole frame, along the rule', { range: POSITIVE }),
    ],
    result: number(LENGTH),
    formula: 'field = length × frame/pixels',
    source: 'derived: proportion along one line of the frame',
    validity: 'The rule lies in the plane of the original, along a side of the frame; distortion is left out.',
    examples: [
      { formula: 'field_from_ruler(300 mm, 4000 px, 6000 px)', gives: '450 mm' },
      { formula: 'field_from_ruler(300 mm, 0 px, 6000 px)', refuses: 'pixels' },
    ],
    compute: (measured: number, pixels: number, frame: number) => (measured * frame) / pixels,
    advise: (_: number, pixels: number, frame: number) =>
      pixels > frame ? 'The length covers more pixels than the frame has: are the two the wrong way round?' : undefined,
  },
  {
    name: 'focal_from_fields',
    subject: 'close-focus',
    about: 'Focal length from two frames of a rule, the camera moved back between them.',
    parameters: [
      positiveLength('field_a', 'field of the frame from farther off'),
      positiveLength('field_b', 'field of the nearer frame'),
      positiveLength('moved', 'how far the lens moved back'),
      positiveLength('sensor', 'side of the sensor along the rule'),
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
          'The frame from farther off takes in the larger field: give that one first, as field_a.',
          'field_a',
        )
      return (moved * sensor) / (fieldA - fieldB)
    },
  },
]
