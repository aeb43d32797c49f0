import { type DisplayUnit, ILLUMINANCE, LUMINANCE, ReadError } from '../../units/index.ts'
import { type Reading, readTyped, type Typed } from '../../units/read.ts'
import { METER_C, METER_K } from '../../units/stops.ts'
import * as words from './words.ts'

/** The sign of a light meter's constant: C for light on an original, K for light off it. */
export type MeterSign = 'C' | 'K'

/** The constants of the meters that light is read with: C in lx s, K in cd s/m². */
export type MeterConstants = Readonly<Partial<Record<MeterSign, number>>>

/** A reading of light in the unit that is asked for, and the constant it was converted with. */
export interface ConvertedReading extends Reading {
  readonly sign: MeterSign
  /** `C = 250` */
  readonly by: string
}

/** The constants of meters of which nothing else is known. */
const STANDARD: Readonly<Record<MeterSign, number>> = { C: METER_C, K: METER_K }

/**
 * By ISO 2720:1974, E S/C = N²/t for light on an original and L S/K = N²/t for light off it, so that EV at ISO 100 is
 * log₂(100 E/C) or log₂(100 L/K).
 */
const signFor = ({ dimension }: DisplayUnit): MeterSign | undefined =>
  dimension === ILLUMINANCE ? 'C' : dimension === LUMINANCE ? 'K' : undefined

/**
 * Reads an exposure value at ISO 100 where lux or candela per square metre are asked, and these where an exposure value
 * is, by the constant of the meter, or the usual one where it is not given. Undefined where nothing has to be converted.
 * Throws ReadError for lux in the place of candela per square metre, and the reverse: what one is in the other depends
 * on the surface.
 */
export function readLight(
  text: string,
  field: DisplayUnit | undefined,
  constants: MeterConstants = {},
): ConvertedReading | undefined {
  const asked = field && signFor(field)
  if (!field || !(asked || field.symbol === 'EV')) return undefined
  let typed: Typed
  try {
    typed = readTyped(text, undefined)
  } catch {
    // Reading it for its field says why.
    return undefined
  }
  const { reading, unit } = typed
  const given = unit && signFor(unit)
  if (!unit || unit.dimension === field.dimension) return undefined
  if (asked && given) throw new ReadError(words.otherLight, 0, text.length)
  const sign = asked && unit.symbol === 'EV' ? asked : asked ? undefined : given
  if (!sign || !(asked || reading.value > 0)) return undefined
  const constant = constants[sign] ?? STANDARD[sign]
  const value = asked ? (constant / 100) * 2 ** reading.value : Math.log2((100 * reading.value) / constant)
  // How much the one changes with the other, for the limits.
  const slope = asked ? value * Math.LN2 : 1 / (reading.value * Math.LN2)
  return {
    value,
    dimension: field.dimension,
    offers: [],
    sign,
    by: `${sign} = ${constant}`,
    ...(reading.tolerance === undefined ? {} : { tolerance: reading.tolerance * slope }),
  }
}
