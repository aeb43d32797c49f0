import { number, type Parameter } from '../../language/index.ts'
import { LENGTH, NONE, STOP } from '../../units/index.ts'
import { F_NUMBER, NOT_NEGATIVE, POSITIVE, parameter, positiveLength, RATIO, SHUTTER } from '../maths/parameters.ts'

/** The parameters that lens and exposure functions share. */
export const FOCAL = positiveLength('focal', 'focal length')
const IMAGE_SIZE_OVER = 'image size over original size'
export const MAGNIFICATION = parameter('magnification', RATIO, IMAGE_SIZE_OVER, { range: POSITIVE })
/** Magnification where 0, focused at infinity, has a meaning too. */
export const MAGNIFICATION_OR_NONE = parameter('magnification', RATIO, IMAGE_SIZE_OVER, { range: NOT_NEGATIVE })
export const LENS_MAGNIFICATION = parameter(
  'lens_magnification',
  RATIO,
  'what the lens is set to by its own focusing; 0 at infinity',
  { range: NOT_NEGATIVE, default: '0' },
)
export const PUPIL_RATIO = parameter(
  'pupil_ratio',
  number(NONE),
  'exit pupil over entrance pupil, each measured through its end of the lens',
  { range: POSITIVE, default: '1' },
)
export const PRINCIPAL_GAP = parameter(
  'principal_gap',
  number(LENGTH),
  'from the front to the rear principal plane; negative where they cross',
  { default: '0 mm' },
)
export const APERTURE = parameter('aperture', F_NUMBER, 'f-number as marked on the lens', { range: POSITIVE })
export const EFFECTIVE_APERTURE = parameter(
  'effective_aperture',
  F_NUMBER,
  'working f-number, with the lens’s extension counted',
  { range: POSITIVE },
)
export const WAVELENGTH = positiveLength('wavelength', 'wavelength of the light', { default: '550 nm' })
export const BLUR = positiveLength('blur', 'largest acceptable blur, its diameter at the sensor')
export const EXPOSURE_TIME = parameter('time', SHUTTER, 'exposure time', { range: POSITIVE })
export const SPEED = parameter('speed', number(NONE), 'ISO speed', { range: POSITIVE })
export const SPEED_OR_100: Parameter = { ...SPEED, default: '100' }
/** A shift of exposure; its range only stops typing errors. */
export const SHIFT = parameter('shift', number(STOP), 'in stops; positive means more exposure', {
  range: { least: -100, most: 100 },
})

/** The validity of a formula that takes the lens to move as a whole. */
export const MOVES_AS_A_WHOLE =
  'A lens that moves as a whole to focus. One that focuses inside itself gets shorter up close: use its focal length as focused.'

/** The greatest error by rounding at which a whole number still counts as itself, not as the next. */
const ROUNDING = 1e-9

/** Rounded up, but a whole number that rounding has nudged upward stays itself: 12.000000000000002 is 12. */
export const ceilGuarded = (x: number): number => Math.ceil(x - ROUNDING * Math.max(1, Math.abs(x))) + 0

/** A length in words, for refusals. */
export const inMillimetres = (metres: number): string => `${+(metres * 1e3).toPrecision(4)} mm`
