import { type Lab, lightness, type Matrix, type Triple } from '../../functions/acceptance/colour-space.ts'
import { type LitPicture, labOf } from '../colour/light.ts'
import { quickLightness } from '../colour/quick-lightness.ts'
import type { PatchArea } from './area.ts'
import { type Clipping, clippingWarnings, type Pixels, pixelsOf } from './pixels.ts'
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
  const { code, light, lab, noise, clipping } = readPatch(picture, pixels)
  return {
    code,
    light,
    lab: [lab.L, lab.a, lab.b],
    noise,
    warnings: clippingWarnings(clipping, words.thePatch),
  }
}

export interface Patch {
  readonly code: Triple
  readonly light: Triple
  readonly lab: Lab
  readonly noise: number
  readonly clipping: Clipping
}

/**
 * Sums over some pixels: of codes, of linear light, and of L* and its square from the first pixel’s, so that the
 * squares stay small.
 */
interface Sums {
  readonly codes: Triple
  readonly lights: Triple
  readonly lightness: number
  readonly squares: number
  /** Pixels with a channel at its greatest code, and with every channel at zero. */
  readonly full: number
  readonly empty: number
}

/** The means of some pixels, and how many of them are clipped. */
export function readPatch(picture: LitPicture, pixels: Pixels): Patch {
  const { left, top, right, bottom } = pixels
  const count = (right - left) * (bottom - top)
  const sums = picture.channels === 1 ? greySums(picture, pixels) : colourSums(picture, pixels)
  const over = ([one, two, three]: Triple, scale: number): Triple => [one / scale, two / scale, three / scale]
  const light = over(sums.lights, count)
  return {
    code: over(sums.codes, count * picture.most),
    light,
    lab: labOf(light, picture.matrix),
    noise: Math.sqrt(Math.max(0, sums.squares / count - (sums.lightness / count) ** 2)),
    clipping: { full: sums.full / count, empty: sums.empty / count },
  }
}

/** For a grey picture every code is counted: what follows from it is computed once per code, not once per pixel. */
function greySums(picture: LitPicture, { left, top, right, bottom }: Pixels): Sums {
  const { samples, width, most } = picture
  const light = picture.light[0] as Float64Array
  const counts = new Uint32Array(most + 1)
  for (let y = top; y < bottom; y++)
    for (let at = y * width + left, end = y * width + right; at < end; at++) {
      const code = samples[at] as number
      counts[code] = (counts[code] as number) + 1
    }
  const first = lightness(light[samples[top * width + left] as number] as number)
  let [code, lit, sum, squares] = [0, 0, 0, 0]
  for (let i = 0; i <= most; i++) {
    const count = counts[i] as number
    if (count === 0) continue
    const Y = light[i] as number
    const off = lightness(Y) - first
    code += count * i
    lit += count * Y
    sum += count * off
    squares += count * off * off
  }
  const [empty, full] = [counts[0] as number, counts[most] as number]
  return { codes: [code, code, code], lights: [lit, lit, lit], lightness: sum, squares, full, empty }
}

/** The channels are written out: a loop over them takes twice as long, and a frame has 45 million pixels. */
function colourSums(picture: LitPicture, { left, top, right, bottom }: Pixels): Sums {
  const { samples, width, most, matrix } = picture
  const [reds, greens, blues] = picture.light as readonly [Float64Array, Float64Array, Float64Array]
  const [toRed, toGreen, toBlue] = (matrix as Matrix)[1]
  let [r, g, b, lightR, lightG, lightB, sum, squares, full, empty] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
  let first = Number.NaN
  for (let y = top; y < bottom; y++)
    for (let at = 3 * (y * width + left), end = 3 * (y * width + right); at < end; at += 3) {
      const red = samples[at] as number
      const green = samples[at + 1] as number
      const blue = samples[at + 2] as number
      if (red === most || green === most || blue === most) full++
      if ((red | green | blue) === 0) empty++
      r += red
      g += green
      b += blue
      const litRed = reds[red] as number
      const litGreen = greens[green] as number
      const litBlue = blues[blue] as number
      lightR += litRed
      lightG += litGreen
      lightB += litBlue
      const L = quickLightness(toRed * litRed + toGreen * litGreen + toBlue * litBlue)
      if (at === 3 * (top * width + left)) first = L
      const off = L - first
      sum += off
      squares += off * off
    }
  return { codes: [r, g, b], lights: [lightR, lightG, lightB], lightness: sum, squares, full, empty }
}
