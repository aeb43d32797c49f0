import {
  converter,
  differenceCiede2000,
  differenceEuclidean,
  modeLab,
  modeLab65,
  modeLrgb,
  modeRgb,
  modeXyz50,
  modeXyz65,
  useMode,
} from 'culori/fn'

for (const mode of [modeRgb, modeLrgb, modeXyz50, modeXyz65, modeLab, modeLab65]) useMode(mode)

export interface Lab {
  readonly L: number
  readonly a: number
  readonly b: number
}

const toD50 = converter('lab')
const toD65 = converter('lab65')
const euclidean = differenceEuclidean('lab65')

// The white point plays no part in a difference of Lab values; this mode is the one culori compares in.
const asCulori = ({ L, a, b }: Lab) => ({ mode: 'lab65' as const, l: L, a, b })

/** CIE 1976 colour difference. */
export const deltaE76 = (one: Lab, other: Lab): number => euclidean(asCulori(one), asCulori(other))

/** CIEDE2000 with k_L = k_C = k_H = 1; without lightness weighting S_L is 1. */
export function deltaE2000(one: Lab, other: Lab, lightnessWeighting = true): number {
  const middle = ((one.L + other.L) / 2 - 50) ** 2
  const weight = 1 + (0.015 * middle) / Math.sqrt(20 + middle)
  // The formula divides ΔL′ by k_L S_L, and S_L depends on the pair alone: k_L = 1/S_L makes the product 1.
  return differenceCiede2000(lightnessWeighting ? 1 : 1 / weight)(asCulori(one), asCulori(other))
}

/** CIELAB of sRGB values from 0 to 1; for D50 adapted by Bradford. */
export function labFromSrgb(r: number, g: number, b: number, white: 'D50' | 'D65'): Lab {
  const colour = { mode: 'rgb' as const, r, g, b }
  const lab = white === 'D50' ? toD50(colour) : toD65(colour)
  return { L: lab.l, a: lab.a, b: lab.b }
}

/** The linear value behind an sRGB value from 0 to 1 (IEC 61966-2-1). */
export const srgbLinear = (value: number): number =>
  value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4

const EPSILON = 216 / 24389
const KAPPA = 24389 / 27

/** L* of a relative luminance from 0 to 1 (ISO/CIE 11664-4). */
export const lightness = (Y: number): number => (Y > EPSILON ? 116 * Math.cbrt(Y) - 16 : KAPPA * Y)

/** The relative luminance of an L*. */
export const luminanceOf = (L: number): number => (L > KAPPA * EPSILON ? ((L + 16) / 116) ** 3 : L / KAPPA)
