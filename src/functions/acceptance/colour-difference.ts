import { differenceCie94, differenceCiede2000, differenceCmc, differenceEuclidean, modeLab65, useMode } from 'culori/fn'
import type { Lab } from './colour-space.ts'

// The white point plays no part in a difference of Lab values; this mode is the one culori compares in.
useMode(modeLab65)
const asCulori = ({ L, a, b }: Lab) => ({ mode: 'lab65' as const, l: L, a, b })

const euclidean = differenceEuclidean('lab65')
const graphicArts = differenceCie94(1, 0.045, 0.015)
const textile = differenceCie94(2, 0.048, 0.014)

/** CIE 1976 colour difference. */
export const deltaE76 = (one: Lab, other: Lab): number => euclidean(asCulori(one), asCulori(other))

/** CIE94 colour difference from a reference (CIE 116-1995), with the weights of graphic arts or of textiles. */
export const deltaE94 = (reference: Lab, sample: Lab, textiles = false): number =>
  (textiles ? textile : graphicArts)(asCulori(reference), asCulori(sample))

/** CMC l:c colour difference from a reference (BS 6923). */
export const deltaECmc = (reference: Lab, sample: Lab, l = 2, c = 1): number =>
  differenceCmc(l, c)(asCulori(reference), asCulori(sample))

/** CIEDE2000 with k_L = k_C = k_H = 1; without lightness weighting S_L is 1. */
export function deltaE2000(one: Lab, other: Lab, lightnessWeighting = true): number {
  const middle = ((one.L + other.L) / 2 - 50) ** 2
  const weight = 1 + (0.015 * middle) / Math.sqrt(20 + middle)
  // The formula divides ΔL′ by k_L S_L, and S_L depends on the pair alone: k_L = 1/S_L makes the product 1.
  return differenceCiede2000(lightnessWeighting ? 1 : 1 / weight)(asCulori(one), asCulori(other))
}
