import { type FunctionRecord, number, Refusal, record, type Type } from '../../language/index.ts'
import { ANGLE, LENGTH, PIXEL, PIXEL_PITCH } from '../../units/index.ts'
import { NOT_NEGATIVE, PLAIN, POSITIVE, parameter, positiveLength, RATIO } from '../maths/parameters.ts'

const CAMERA_PLACE = record('camera place', { height: number(LENGTH), horizontal: number(LENGTH) })
const QUARTER_TURN = Math.PI / 2
const EITHER_WAY = { above: -QUARTER_TURN, below: QUARTER_TURN }
const ANY = { kind: 'any' } as const

const tilt = parameter('tilt', number(ANGLE), 'between the sensor and the original, either way', { range: EITHER_WAY })
const entranceDistance = positiveLength('entrance_distance', 'from the entrance pupil to the original')

/** The same kind of quantity as an argument, without its notation. */
const like =
  (index: number) =>
  (args: readonly Type[]): Type => {
    const type = args[index]
    return type?.kind === 'number' ? number(type.dimension) : PLAIN
  }

function keystone(angle: number, field: number, distance: number): number {
  const step = (field / 2) * Math.sin(Math.abs(angle))
  if (step >= distance)
    throw new Refusal(
      '“tilt” puts the near edge behind the lens. Give less tilt, a smaller field or more distance.',
      'tilt',
    )
  return (distance + step) / (distance - step) - 1
}

/** Sections 8 and 8b of the trade: square and level; upright originals, frames and rooms. */
export const SQUARENESS: readonly FunctionRecord[] = [
  {
    name: 'mirror_tilt',
    subject: 'squareness',
    about: 'The camera’s tilt from where it sees itself in a mirror laid on the original.',
    also: ['alignment', 'parallel', 'squareness', 'mirror alignment'],
    parameters: [
      parameter('offset', number(LENGTH), 'of the lens’s reflection from the frame’s centre, at the mirror’s plane'),
      positiveLength('distance', 'from the entrance pupil to the mirror, square to it'),
    ],
    result: number(ANGLE),
    formula: 'atan(offset/distance)',
    source: 'derived: the line of sight to the lens’s own reflection is perpendicular to the mirror',
    validity: 'A flat mirror lying on the original; its reflection is centred only when the axis is square to it.',
    examples: [
      { formula: 'mirror_tilt(10 mm, 1 m)', gives: '0.5729387 deg', within: '0.0000001 deg' },
      { formula: 'mirror_tilt(10 mm, 0 m)', refuses: 'distance' },
    ],
    compute: (offset: number, distance: number) => Math.atan(offset / distance),
  },
  {
    name: 'mirror_tilt_pixels',
    subject: 'squareness',
    about: 'The camera’s tilt from the reflection’s offset in the frame.',
    also: ['alignment', 'parallel', 'squareness'],
    parameters: [
      parameter('offset', number(PIXEL), 'of the lens’s reflection from the frame’s centre'),
      parameter('pixel_pitch', number(PIXEL_PITCH), 'of the sensor', { range: POSITIVE }),
      positiveLength('focal', 'focal length'),
      parameter('magnification', RATIO, 'focused on the mirror’s surface', { range: POSITIVE }),
      parameter('pupil_ratio', PLAIN, 'exit pupil over entrance pupil', { default: '1', range: POSITIVE }),
    ],
    result: number(ANGLE),
    formula: 'atan(offset · pitch/(f (1 + m/p)))',
    source: 'derived: offset/m at the mirror over the entrance distance f (1/m + 1/p)',
    validity: 'The middle of the blurred reflection counts. Cropped or scaled pixels are scaled back first.',
    examples: [
      // 40 px of 5 µm is 0.2 mm; f (1 + m) = 75 mm: atan(1/375).
      { formula: 'mirror_tilt_pixels(40 px, 5 [um/px], 60 mm, 1:4)', gives: '0.1527884 deg', within: '0.0000001 deg' },
      { formula: 'mirror_tilt_pixels(40 px, 0 [um/px], 60 mm, 1:4)', refuses: 'pixel_pitch' },
    ],
    compute: (offset: number, pitch: number, focal: number, magnification: number, pupilRatio: number) =>
      Math.atan((offset * pitch) / (focal * (1 + magnification / pupilRatio))),
  },
  {
    name: 'keystone',
    subject: 'squareness',
    about: 'How much longer the near edge is in the frame than the far one.',
    also: ['keystoning', 'converging verticals', 'trapezoid', 'perspective distortion', 'trapezium'],
    parameters: [tilt, positiveLength('field', 'size of the original along the tilt'), entranceDistance],
    result: PLAIN,
    formula: '(D + y sin θ)/(D − y sin θ) − 1, y = field/2',
    source: 'derived: central projection; scale is in proportion to 1/distance from the entrance pupil',
    validity: 'Times the pixels along the far edge it gives the difference in pixels.',
    examples: [
      // 0.3 m · sin 1° = 5.2357 mm; 1.0052357/0.9947643 − 1.
      { formula: 'keystone(1 deg, 0.6 m, 1 m)', gives: '0.0105266', within: '0.0000001' },
      { formula: 'keystone(0.0954 deg, 0.6 m, 1 m)', gives: '0.001', within: '0.000001' },
      { formula: 'keystone(80 deg, 3 m, 1 m)', refuses: 'tilt' },
    ],
    compute: keystone,
  },
  {
    name: 'tilt_allowance',
    subject: 'squareness',
    about: 'The greatest tilt whose keystone stays within a number of pixels.',
    also: ['keystone', 'parallelism', 'squareness'],
    parameters: [
      parameter('pixels', number(PIXEL), 'difference allowed between the edges', { range: NOT_NEGATIVE }),
      parameter('edge_pixels', number(PIXEL), 'along the far edge', { range: POSITIVE }),
      positiveLength('field', 'size of the original along the tilt'),
      entranceDistance,
    ],
    result: number(ANGLE),
    formula: 'q = pixels/edge_pixels; asin(2 D q/(field (2 + q)))',
    source: 'derived: the inverse of keystone',
    examples: [
      { formula: 'tilt_allowance(8 px, 8000 px, 0.6 m, 1 m)', gives: '0.0954 deg', within: '0.0001 deg' },
      { formula: 'tilt_allowance(8000 px, 8000 px, 0.6 m, 1 m)', refuses: 'pixels' },
    ],
    compute: (pixels: number, edgePixels: number, field: number, distance: number) => {
      const q = pixels / edgePixels
      const sine = (2 * distance * q) / (field * (2 + q))
      if (sine > 1)
        throw new Refusal(
          '“pixels” is more than any tilt of this field gives. Every tilt passes; ask for fewer pixels to find a limit.',
          'pixels',
        )
      return Math.asin(sine)
    },
  },
  {
    name: 'tilt_depth',
    subject: 'squareness',
    about: 'The depth of field a tilt uses up.',
    also: ['parallelism', 'scheimpflug', 'focus plane'],
    parameters: [tilt, positiveLength('field', 'size of the original along the tilt')],
    result: number(LENGTH),
    formula: 'field · sin θ',
    source: 'derived: plane trigonometry',
    validity: 'Compare with the total depth of field.',
    examples: [
      { formula: 'tilt_depth(30 deg, 0.6 m)', gives: '300 mm' },
      { formula: 'tilt_depth(90 deg, 0.6 m)', refuses: 'tilt' },
    ],
    compute: (angle: number, field: number) => field * Math.sin(Math.abs(angle)),
  },
  {
    name: 'level_tilt',
    subject: 'squareness',
    about: 'The tilt a spirit level shows.',
    parameters: [
      parameter('sensitivity', PLAIN, 'slope of one division: 0.3 [mm/m]', { range: POSITIVE }),
      parameter('divisions', PLAIN, 'the bubble is off its mark, either way'),
    ],
    result: number(ANGLE),
    formula: 'atan(sensitivity × divisions)',
    source: 'derived: a level’s sensitivity is the slope of one division',
    validity: 'Turn the level end for end and take the mean: its own error drops out.',
    examples: [
      { formula: 'level_tilt(0.3 [mm/m], 2)', gives: '0.0343775 deg', within: '0.0000001 deg' },
      { formula: 'level_tilt(0 [mm/m], 2)', refuses: 'sensitivity' },
    ],
    compute: (sensitivity: number, divisions: number) => Math.atan(sensitivity * divisions),
  },
  {
    name: 'distortion_shift',
    subject: 'squareness',
    about: 'How far distortion moves the frame’s corner.',
    also: ['barrel distortion', 'pincushion', 'lens distortion'],
    parameters: [
      parameter('distortion', PLAIN, 'at the corner, pincushion positive: −0.5 %', { range: { above: -1, below: 1 } }),
      parameter('half_diagonal', ANY, 'of the frame: a length or pixels', { range: POSITIVE }),
    ],
    result: like(1),
    formula: 'R δ',
    source: 'derived: distortion is the relative change of the distance from the axis',
    validity: 'Positive outward.',
    examples: [
      { formula: 'distortion_shift(-0.5 %, 5000 px)', gives: '-25 px' },
      { formula: 'distortion_shift(1 %, 0 px)', refuses: 'half_diagonal' },
    ],
    compute: (distortion: number, halfDiagonal: number) => halfDiagonal * distortion,
  },
  {
    name: 'edge_bow',
    subject: 'squareness',
    about: 'How far distortion bows a long edge of the frame.',
    also: ['barrel distortion', 'pincushion'],
    parameters: [
      parameter('distortion', PLAIN, 'at the corner, pincushion positive', { range: { above: -1, below: 1 } }),
      parameter('width', ANY, 'of the frame, along the edge', { range: POSITIVE }),
      parameter('height', ANY, 'of the frame, across it', { range: POSITIVE }),
    ],
    result: like(1),
    formula: 'δ (h/2)(w/2)²/R², R² = (w/2)² + (h/2)²',
    source: 'derived: third-order distortion, r′ = r (1 + δ r²/R²); corner less middle of the edge',
    validity: 'Third-order distortion alone; positive where the corners are pulled out beyond the middle.',
    examples: [
      // w/2 = 4000, h/2 = 3000, R = 5000: 0.01 · 3000 · 0.64.
      { formula: 'edge_bow(1 %, 8000 px, 6000 px)', gives: '19.2 px' },
      { formula: 'edge_bow(1 %, 8000 px, 0 px)', refuses: 'height' },
    ],
    compute: (distortion: number, width: number, height: number) =>
      (distortion * (height / 2) * width ** 2) / (width ** 2 + height ** 2),
  },
  {
    name: 'diagonal_skew',
    subject: 'squareness',
    about: 'How far a rectangle’s corners are from square, from its two diagonals in the frame.',
    also: ['squareness', 'skew', 'parallelogram'],
    parameters: [
      parameter('diagonal_a', ANY, 'one diagonal', { range: POSITIVE }),
      parameter('diagonal_b', ANY, 'the other', { range: POSITIVE }),
      parameter('width', ANY, 'of the rectangle in the frame', { range: POSITIVE }),
      parameter('height', ANY, 'of the rectangle in the frame', { range: POSITIVE }),
    ],
    result: number(ANGLE),
    formula: 'asin((a² − b²)/(4 w h))',
    source: 'derived: a parallelogram’s diagonals, a² = w² + h² + 2 w h sin σ and b² with a minus',
    validity: 'A symmetrical keystone leaves the diagonals equal and is not seen.',
    examples: [
      // A unit square sheared by 1°: a² = 2 + 2 sin 1°, b² = 2 − 2 sin 1°.
      {
        formula: 'diagonal_skew(1426.5009 mm, 1401.8185 mm, 1 m, 1 m)',
        gives: '1 deg',
        within: '0.00001 deg',
      },
      { formula: 'diagonal_skew(3 m, 1 m, 1 m, 1 m)', refuses: 'diagonal' },
    ],
    compute: (a: number, b: number, width: number, height: number) => {
      const sine = (a ** 2 - b ** 2) / (4 * width * height)
      if (Math.abs(sine) > 1)
        throw new Refusal(
          '“diagonal_a” and “diagonal_b” fit no rectangle of this width and height. Measure the diagonals and the sides again.',
          'diagonal_a',
        )
      return Math.asin(sine)
    },
  },
  {
    name: 'camera_for_lean',
    subject: 'squareness',
    about: 'Where the camera goes in front of an original that leans.',
    also: ['keystone', 'easel', 'leaning original'],
    parameters: [
      parameter('centre_height', number(LENGTH), 'of the original’s centre over the floor', { range: NOT_NEGATIVE }),
      parameter('lean', number(ANGLE), 'from upright, top away from the camera positive', { range: EITHER_WAY }),
      positiveLength('distance', 'from the original’s centre to the entrance pupil'),
    ],
    result: CAMERA_PLACE,
    formula: 'height = centre + D sin lean; horizontal = D cos lean',
    source: 'derived: the camera is on the perpendicular to the original through its centre',
    validity: 'Easel or wall; the camera is tipped down by the same angle.',
    examples: [
      { formula: 'camera_for_lean(1.4 m, 30 deg, 2 m).height', gives: '2.4 m' },
      { formula: 'camera_for_lean(1.4 m, 5 deg, 2 m).horizontal', gives: '1992.3894 mm', within: '0.0001 mm' },
      { formula: 'camera_for_lean(1.4 m, 90 deg, 2 m)', refuses: 'lean' },
    ],
    compute: (centre: number, lean: number, distance: number) => ({
      height: centre + distance * Math.sin(lean),
      horizontal: distance * Math.cos(lean),
    }),
    advise: (centre: number, lean: number, distance: number) =>
      centre + distance * Math.sin(lean) < 0
        ? 'The camera would be below the floor: raise the original, or lean it less.'
        : undefined,
  },
  {
    name: 'edge_shadow',
    subject: 'squareness',
    about: 'How far a frame, a weight or a mount casts its shadow over the image.',
    parameters: [
      parameter('depth', number(LENGTH), 'height of the edge above the image', { range: NOT_NEGATIVE }),
      parameter('elevation', number(ANGLE), 'of the lamp over the plane of the image', {
        range: { above: 0, most: QUARTER_TURN },
      }),
    ],
    result: number(LENGTH),
    formula: 'depth/tan elevation',
    source: 'derived: plane trigonometry',
    validity: 'A small lamp; a large one softens the shadow’s edge.',
    examples: [
      { formula: 'edge_shadow(20 mm, 45 deg)', gives: '20 mm' },
      { formula: 'edge_shadow(20 mm, 0 deg)', refuses: 'elevation' },
    ],
    compute: (depth: number, elevation: number) => depth / Math.tan(elevation),
  },
]
