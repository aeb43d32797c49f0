import { lightness } from '../../functions/acceptance/colour-space.ts'

/** Steps of the table from 0 to 1: fine enough that one correction is exact to nine figures. */
const STEPS = 1 << 15
/** Below this luminance a cube root changes too much from one step to the next, and L* is a straight line. */
const LEAST = 0.009

let roots: Float32Array | undefined

const rootsOf = (): Float32Array => Float32Array.from({ length: STEPS + 1 }, (_, i) => Math.cbrt((i + 0.5) / STEPS))

/**
 * L* of a relative luminance (ISO/CIE 11664-4), to 1e-8 of what `lightness` gives, in a fraction of its time:
 * a tabled cube root with one step of Halley’s method.
 */
export function quickLightness(Y: number): number {
  if (!(Y >= LEAST && Y <= 1)) return lightness(Y)
  roots ??= rootsOf()
  const root = roots[(Y * STEPS) | 0] as number
  const cube = root * root * root
  return 116 * root * ((cube + 2 * Y) / (2 * cube + Y)) - 16
}
