import { type DisplayUnit, ILLUMINANCE, LUMINANCE, ReadError } from '../../units/index.ts'
import { type Reading, readTyped, type Typed } from '../../units/read.ts'
import { METER_C, METER_K } from '../../units/stops.ts'
import * as words from './words.ts'

/** A reading of light in the unit that is asked for, and the constant it was converted with: `C = 250`. */
export interface ConvertedReading extends Reading {
  readonly by: string
}

/**
 * The constant of a light meter that is not known, by ISO 2720:1974: E S/C = N²/t for light on an original and
 * L S/K = N²/t for light off it, so that EV at ISO 100 is log₂(100 E/C) or log₂(100 L/K). C in lx s, K in cd s/m².
 */
const constantFor = ({ dimension }: DisplayUnit): readonly [string, number] | undefined =>
  dimension === ILLUMINANCE ? ['C', METER_C] : dimension === LUMINANCE ? ['K', METER_K] : undefined

/**
 * Reads an exposure value at ISO 100 where lux or candela per square metre are asked, and these where an exposure value
 * is. Undefined where nothing has to be converted. Throws ReadError for lux in the place of candela per square metre, and
 * the reverse: what one is in the other depends on the surface.
 */
export function readLight(text: string, field: DisplayUnit | undefined): ConvertedReading | undefined {
  const asked = field && constantFor(field)
  if (!field || !(asked || field.symbol === 'EV')) return undefined
  let typed: Typed
  try {
    typed = readTyped(text, undefined)
  } catch {
    // Reading it for its field says why.
    return undefined
  }
  const { reading, unit } = typed
  const given = unit && constantFor(unit)
  if (!unit || unit.dimension === field.dimension) return undefined
  if (asked && given) throw new ReadError(words.otherLight, 0, text.length)
  const [name, constant] = asked && unit.symbol === 'EV' ? asked : !asked && given ? given : []
  if (!constant || !(asked || reading.value > 0)) return undefined
  const value = asked ? (constant / 100) * 2 ** reading.value : Math.log2((100 * reading.value) / constant)
  // How much the one changes with the other, for the limits.
  const slope = asked ? value * Math.LN2 : 1 / (reading.value * Math.LN2)
  return {
    value,
    dimension: field.dimension,
    offers: [],
    by: `${name} = ${constant}`,
    ...(reading.tolerance === undefined ? {} : { tolerance: reading.tolerance * slope }),
  }
}
