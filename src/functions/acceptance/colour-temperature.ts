import observer from '../../../shared/reference/cie-1931-observer.json'
import { Refusal } from '../../language/index.ts'
import { leastBetween } from './least-between.ts'

/** CIE 1960 uniform chromaticity, in which a correlated colour temperature is the nearest on the Planckian locus. */
interface Uniform {
  readonly u: number
  readonly v: number
}

/** Second radiation constant, h c/k, in metre kelvin (CODATA 2018, exact). */
const SECOND_RADIATION_CONSTANT_METRE_KELVIN = 1.438776877e-2
const METRES_PER_NANOMETRE = 1e-9

/** Reciprocal megakelvin: equal steps are about equally visible. 100 000 K to 1000 K. */
const LEAST_MIRED = 10
const GREATEST_MIRED = 1000
const SCAN_STEP_MIRED = 10
/** At 6500 K a hundredth of a millikelvin. */
const FINEST_MIRED = 1e-7

/** Beyond this distance in u, v a correlated colour temperature says nothing (CIE 15). */
const GREATEST_DISTANCE = 0.05

/** The chromaticity of a black body, by Planck’s law and the CIE 1931 observer summed every 5 nm. */
function blackBody(mired: number): Uniform {
  const temperature = 1e6 / mired
  let [X, Y, Z] = [0, 0, 0]
  for (const [i, matching] of observer.xyz.entries()) {
    const wavelength = (observer.first_nm + observer.step_nm * i) * METRES_PER_NANOMETRE
    const exponent = SECOND_RADIATION_CONSTANT_METRE_KELVIN / (wavelength * temperature)
    const radiance = wavelength ** -5 / Math.expm1(exponent)
    X += radiance * (matching[0] as number)
    Y += radiance * (matching[1] as number)
    Z += radiance * (matching[2] as number)
  }
  const sum = X + 15 * Y + 3 * Z
  return { u: (4 * X) / sum, v: (6 * Y) / sum }
}

const uniform = (x: number, y: number): Uniform => {
  const sum = -2 * x + 12 * y + 3
  return { u: (4 * x) / sum, v: (6 * y) / sum }
}

/**
 * The correlated colour temperature of a chromaticity, in kelvin: the black body nearest to it in CIE 1960 u, v.
 * @param x CIE 1931 x
 * @param y CIE 1931 y
 * @throws Refusal farther than 0.05 from the Planckian locus, or beyond its ends at 1000 K and 100 000 K
 */
export function correlatedColourTemperature(x: number, y: number): number {
  const target = uniform(x, y)
  const distance = (mired: number): number => {
    const body = blackBody(mired)
    return Math.hypot(body.u - target.u, body.v - target.v)
  }
  let nearest = LEAST_MIRED
  let least = Number.POSITIVE_INFINITY
  for (let mired = LEAST_MIRED; mired <= GREATEST_MIRED; mired += SCAN_STEP_MIRED) {
    const d = distance(mired)
    if (d < least) {
      least = d
      nearest = mired
    }
  }
  const mired = leastBetween(
    Math.max(LEAST_MIRED, nearest - SCAN_STEP_MIRED),
    Math.min(GREATEST_MIRED, nearest + SCAN_STEP_MIRED),
    distance,
    FINEST_MIRED,
  )
  const off = distance(mired)
  if (!(off <= GREATEST_DISTANCE))
    throw new Refusal(
      `“x” and “y” are ${off.toFixed(3)} from the Planckian locus in CIE 1960 u, v. Beyond ${GREATEST_DISTANCE} a light has no colour temperature. Check the two, or describe the light by its x and y.`,
      'x',
    )
  if (mired < LEAST_MIRED + 1e-4 || mired > GREATEST_MIRED - 1e-4)
    throw new Refusal(
      '“x” and “y” are nearest to a black body below 1000 K or above 100 000 K, where this function ends. Check the two.',
      'x',
    )
  return 1e6 / mired
}
