import { type FunctionRecord, number, Refusal, record, YES_NO } from '../../language/index.ts'
import { LENGTH } from '../../units/index.ts'
import { length, parameter, positiveLength, RATIO } from '../maths/parameters.ts'
import {
  FOCAL,
  inMillimetres,
  MAGNIFICATION,
  MAGNIFICATION_OR_NONE,
  MOVES_AS_A_WHOLE,
  PRINCIPAL_GAP,
} from './lens-parameters.ts'

const CONJUGATES = 'derived: 1/u + 1/v = 1/f with m = v/u (Gauss)'

const SIZE = record('size', { width: number(LENGTH), height: number(LENGTH) })

/** The size on the sensor, and the column. */
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
    also: ['reproduction ratio', 'scale', 'image ratio', 'magnification'],
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
    about: 'Largest magnification at which the whole original, with a border all around, fits the sensor.',
    also: ['reproduction ratio', 'fill the frame', 'framing', 'border'],
    parameters: [
      positiveLength('original_width', 'width of the original'),
      positiveLength('original_height', 'height of the original'),
      positiveLength('sensor_width', 'width of the sensor'),
      positiveLength('sensor_height', 'height of the sensor'),
      length('border', 'left free on each side, at the original', { default: '0 mm' }),
      parameter('turn', YES_NO, 'whether the original may be turned by 90°', { default: 'yes' }),
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
    also: ['reproduction ratio', 'track', 'total track'],
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
      { formula: 'magnification_from_track(60 mm, 200 mm)', refuses: 'too short to focus' },
    ],
    compute: (focal: number, track: number, gap: number) => {
      const s = (track - gap) / focal - 2
      if (s < 2 - 1e-12)
        throw new Refusal(
          `“original_to_sensor” is too short to focus: a ${inMillimetres(focal)} lens needs at least four focal lengths from original to sensor, ${inMillimetres(4 * focal + gap)} here. Raise the camera or use a shorter lens.`,
          'original_to_sensor',
        )
      // (s − √(s² − 4))/2, without its loss of digits where the camera is far off.
      return 2 / (s + Math.sqrt(Math.max(0, s * s - 4)))
    },
  },
  {
    name: 'field_size',
    subject: 'close-focus',
    about: 'What a side of the sensor covers at the original.',
    also: ['field of view', 'coverage', 'area covered'],
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
    also: ['working distance', 'object distance', 'subject distance', 'lens height'],
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
    also: ['image distance', 'bellows', 'flange'],
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
    also: ['working distance', 'total track', 'camera height', 'conjugate distance'],
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
    also: ['reproduction ratio', 'scale'],
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
          `“original_distance” of ${inMillimetres(distance)} is within the focal length of ${inMillimetres(focal)}, where no real image forms. Move the original farther than the focal length.`,
          'original_distance',
        )
      return focal / (distance - focal)
    },
  },
  {
    name: 'clear_distance',
    subject: 'close-focus',
    about: 'Room between the front of the lens and the original, for lamps and hands.',
    also: ['working distance', 'free distance', 'clearance', 'lens to subject'],
    parameters: [
      FOCAL,
      MAGNIFICATION,
      parameter(
        'principal_inset',
        number(LENGTH),
        'from the front rim or hood back to the front principal plane; negative where the plane is in front of the rim',
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
          `“magnification” brings the lens ${inMillimetres(-clear)} past the original, so they would touch. Use a longer lens or a smaller magnification, or take the hood off.`,
          'magnification',
        )
      return clear
    },
  },
  {
    name: 'column_height',
    subject: 'close-focus',
    about: 'Where to set the carriage on the column, its scale being zero at the baseboard.',
    also: ['column setting', 'camera height', 'carriage'],
    parameters: [
      positiveLength('original_to_sensor', 'from the original to the sensor'),
      parameter(
        'sensor_to_carriage',
        number(LENGTH),
        'from the sensor up to the mark on the carriage; negative where the mark is below the sensor',
        { default: '0 mm' },
      ),
      length('original_thickness', 'how far the face of the original is above the baseboard', { default: '0 mm' }),
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
          `“sensor_to_carriage” puts the carriage mark ${inMillimetres(-height)} under the baseboard. Check the sign: positive where the mark is above the sensor.`,
          'sensor_to_carriage',
        )
      return height
    },
  },
]
