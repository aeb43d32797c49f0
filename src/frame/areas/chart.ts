import { deltaE2000 } from '../../functions/acceptance/colour-difference.ts'
import type { Triple } from '../../functions/acceptance/colour-space.ts'
import { percentileOf } from '../../functions/acceptance/samples.ts'
import type { LitPicture } from '../colour/light.ts'
import { quoted } from '../problem.ts'
import type { ChartArea } from './area.ts'
import { readPatch } from './patch.ts'
import { clippingWarnings, pixelsOf } from './pixels.ts'
import * as words from './words.ts'

export interface ChartReading {
  readonly patches: readonly { readonly name: string; readonly lab: Triple; readonly delta_e_2000: number }[]
  readonly mean: number
  readonly percentile_90: number
  readonly worst: number
  readonly worst_name: string
  readonly warnings: readonly string[]
}

/**
 * Measures the patches of a colour chart: CIE L*a*b* for D50 of each, and its difference from the reference as
 * CIEDE2000 (CIE 142; ISO/CIE 11664-6), with mean, 90th percentile and worst. Throws FrameError where a patch is not
 * in the picture.
 */
export function measureChart({ name, patches }: ChartArea, picture: LitPicture): ChartReading {
  const warnings: string[] = []
  const read = patches.map((patch) => {
    const pixels = pixelsOf(patch.box, picture, words.patchOf(quoted(patch.name), `“${name}”`))
    const { lab, clipping } = readPatch(picture, pixels)
    warnings.push(...clippingWarnings(clipping, words.patchNamed(quoted(patch.name))))
    const [L, a, b] = patch.lab
    return { name: patch.name, lab: [lab.L, lab.a, lab.b] as const, delta_e_2000: deltaE2000({ L, a, b }, lab) }
  })
  const differences = read.map((one) => one.delta_e_2000)
  const worst = Math.max(...differences)
  return {
    patches: read,
    mean: differences.reduce((sum, one) => sum + one, 0) / differences.length,
    percentile_90: percentileOf(differences, 0.9),
    worst,
    worst_name: read[differences.indexOf(worst)]?.name as string,
    warnings,
  }
}
