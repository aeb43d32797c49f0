import { type Lab, lightness, type Triple } from '../../functions/acceptance/colour-space.ts'
import { type LitPicture, labOf } from '../colour/light.ts'
import type { PatchArea } from './area.ts'
import { clippingIn, clippingWarnings, type Pixels, pixelsOf } from './pixels.ts'
import * as words from './words.ts'

export interface PatchReading {
  /** Mean code of each channel, 0 to 1. */
  readonly code: Triple
  /** Mean linear light of each channel. */
  readonly light: Triple
  /** Of the mean light, D50. */
  readonly lab: Triple
  /** Standard deviation of the pixels’ L*. */
  readonly noise: number
  readonly warnings: readonly string[]
}

/**
 * Measures one even patch: codes and linear light 0 to 1, CIE L*a*b* for D50, and the standard deviation of L*.
 * Throws FrameError where its box is not in the picture.
 */
export function measurePatch({ box, name }: PatchArea, picture: LitPicture): PatchReading {
  const pixels = pixelsOf(box, picture, `“${name}”`)
  const { code, light, lab, noise } = readPatch(picture, pixels)
  return {
    code,
    light,
    lab: [lab.L, lab.a, lab.b],
    noise,
    warnings: clippingWarnings(clippingIn(picture, pixels), words.thePatch),
  }
}

export interface Patch {
  readonly code: Triple
  readonly light: Triple
  readonly lab: Lab
  readonly noise: number
}

/** The means of some pixels. */
export function readPatch(picture: LitPicture, { left, top, right, bottom }: Pixels): Patch {
  const { samples, width, channels, most, light: tables, luminance, matrix } = picture
  const codes = new Float64Array(channels)
  const lights = new Float64Array(channels)
  // Deviations from the first pixel’s L*, so that the squares stay small.
  let [first, sum, squares] = [Number.NaN, 0, 0]
  for (let y = top; y < bottom; y++)
    for (let x = left, at = (y * width + left) * channels; x < right; x++, at += channels) {
      let Y = 0
      for (let c = 0; c < channels; c++) {
        const code = samples[at + c] as number
        codes[c] = (codes[c] as number) + code
        lights[c] = (lights[c] as number) + ((tables[c] as Float64Array)[code] as number)
        Y += (luminance[c] as Float64Array)[code] as number
      }
      const L = lightness(Y)
      if (Number.isNaN(first)) first = L
      sum += L - first
      squares += (L - first) ** 2
    }
  const count = (right - left) * (bottom - top)
  const three = (values: Float64Array, scale: number): Triple => {
    const [one, two, three] = values as unknown as Triple
    return channels === 1 ? [one / scale, one / scale, one / scale] : [one / scale, two / scale, three / scale]
  }
  const light = three(lights, count)
  const noise = Math.sqrt(Math.max(0, squares / count - (sum / count) ** 2))
  return { code: three(codes, count * most), light, lab: labOf(light, matrix), noise }
}
