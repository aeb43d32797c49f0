/** The base quantities: the seven of the SI, and four the trade counts apart. */
export const BASES = [
  'length',
  'mass',
  'time',
  'current',
  'temperature',
  'amount',
  'luminosity',
  'angle',
  'stop',
  'pixel',
  'bit',
] as const

export type Base = (typeof BASES)[number]

/**
 * What kind of quantity a number is: the powers of the base quantities.
 * Dimensions are interned, so two are equal exactly when they are identical.
 */
export class Dimension {
  private static readonly known = new Map<string, Dimension>()

  private constructor(
    readonly exponents: readonly number[],
    readonly key: string,
  ) {}

  static of(exponents: readonly number[]): Dimension {
    // Roots leave thirds and halves; rounding to 1/12 makes (x^(1/3))^3 the same dimension as x.
    const rounded = exponents.map((e) => Math.round(e * 12) / 12 + 0)
    const key = rounded.join(' ')
    let dimension = Dimension.known.get(key)
    if (!dimension) {
      dimension = new Dimension(Object.freeze(rounded), key)
      Dimension.known.set(key, dimension)
    }
    return dimension
  }

  static base(base: Base): Dimension {
    return Dimension.of(BASES.map((name) => (name === base ? 1 : 0)))
  }

  times(other: Dimension): Dimension {
    return Dimension.of(this.exponents.map((e, i) => e + (other.exponents[i] as number)))
  }

  over(other: Dimension): Dimension {
    return Dimension.of(this.exponents.map((e, i) => e - (other.exponents[i] as number)))
  }

  power(exponent: number): Dimension {
    return Dimension.of(this.exponents.map((e) => e * exponent))
  }

  /** Its powers in words: `length^2 time^-1`. */
  get powers(): string {
    return this.exponents
      .flatMap((e, i) => (e === 0 ? [] : [e === 1 ? (BASES[i] as string) : `${BASES[i]}^${+e.toFixed(3)}`]))
      .join(' ')
  }
}

export const NONE = Dimension.of(BASES.map(() => 0))
export const LENGTH = Dimension.base('length')
export const MASS = Dimension.base('mass')
export const TIME = Dimension.base('time')
export const CURRENT = Dimension.base('current')
export const TEMPERATURE = Dimension.base('temperature')
export const AMOUNT = Dimension.base('amount')
export const LUMINOUS_INTENSITY = Dimension.base('luminosity')
export const ANGLE = Dimension.base('angle')
export const STOP = Dimension.base('stop')
export const PIXEL = Dimension.base('pixel')
export const DATA = Dimension.base('bit')

export const AREA = LENGTH.power(2)
export const VOLUME = LENGTH.power(3)
export const FREQUENCY = TIME.power(-1)
export const VELOCITY = LENGTH.over(TIME)
export const ACCELERATION = VELOCITY.over(TIME)
export const FORCE = MASS.times(ACCELERATION)
export const ENERGY = FORCE.times(LENGTH)
export const POWER = ENERGY.over(TIME)
export const IRRADIANCE = POWER.over(AREA)
/** Heat given off for each kelvin and area, W/(m² K). */
export const HEAT_TRANSFER = IRRADIANCE.over(TEMPERATURE)
export const PRESSURE = FORCE.over(AREA)
export const VOLTAGE = POWER.over(CURRENT)
export const RESISTANCE = VOLTAGE.over(CURRENT)
export const CHARGE = CURRENT.times(TIME)
export const SOLID_ANGLE = ANGLE.power(2)
export const LUMINOUS_FLUX = LUMINOUS_INTENSITY.times(SOLID_ANGLE)
export const ILLUMINANCE = LUMINOUS_FLUX.over(AREA)
export const LUMINANCE = LUMINOUS_INTENSITY.over(AREA)
/** Light dose (luminous exposure), lx s. */
export const LIGHT_DOSE = ILLUMINANCE.times(TIME)
export const SAMPLING = PIXEL.over(LENGTH)
export const PIXEL_PITCH = LENGTH.over(PIXEL)
/** Optical power in dpt and spatial frequency in lp/mm are both a reciprocal length. */
export const RECIPROCAL_LENGTH = LENGTH.power(-1)
/** Mired values: a reciprocal temperature. */
export const RECIPROCAL_TEMPERATURE = TEMPERATURE.power(-1)
export const DATA_RATE = DATA.over(TIME)
