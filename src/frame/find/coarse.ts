import type { LitPicture } from '../colour/light.ts'

/** A small picture of lightness, from 0 to 1, row by row. */
export interface Coarse {
  readonly width: number
  readonly height: number
  readonly values: Float64Array
  /** Pixels of the picture for one of these. */
  readonly step: number
}

/** The longer side of the small picture, and the most pixels each way that are averaged into one. */
const LONGER = 360
const MOST_AVERAGED = 6

/** The picture made small; by the cube root of the light, in which a card and its ground differ as they do to the eye. */
export function coarseOf({ width, height, channels, samples, luminance }: LitPicture): Coarse {
  const step = Math.max(1, Math.max(width, height) / LONGER)
  const [across, down] = [Math.max(1, Math.floor(width / step)), Math.max(1, Math.floor(height / step))]
  const count = Math.min(MOST_AVERAGED, Math.max(1, Math.round(step)))
  const values = new Float64Array(across * down)
  for (let row = 0, to = 0; row < down; row++)
    for (let column = 0; column < across; column++, to++) {
      let sum = 0
      for (let j = 0; j < count; j++)
        for (let i = 0; i < count; i++) {
          const x = Math.floor((column + (i + 0.5) / count) * step)
          const y = Math.floor((row + (j + 0.5) / count) * step)
          const at = (y * width + x) * channels
          for (let c = 0; c < channels; c++) sum += (luminance[c] as Float64Array)[samples[at + c] as number] as number
        }
      values[to] = Math.cbrt(Math.max(0, sum / count ** 2))
    }
  return { width: across, height: down, values, step }
}

const BINS = 256

/** The level that parts a picture best into dark and bright (Otsu 1979, the greatest variance between the two); undefined where it is even. */
export function levelOf({ values }: Coarse): number | undefined {
  const [least, greatest] = values.reduce(([a, b], value) => [Math.min(a, value), Math.max(b, value)], [1, 0])
  if (!(greatest - least > 0.05)) return undefined
  const counts = new Float64Array(BINS)
  for (const value of values) {
    const bin = Math.min(BINS - 1, Math.floor(((value - least) / (greatest - least)) * BINS))
    counts[bin] = (counts[bin] as number) + 1
  }
  const total = counts.reduce((sum, count, bin) => sum + count * bin, 0)
  let [below, sumBelow, best, first, last] = [0, 0, 0, 0, 0]
  for (let bin = 0; bin < BINS - 1; bin++) {
    below += counts[bin] as number
    sumBelow += (counts[bin] as number) * bin
    const above = values.length - below
    if (below === 0 || above === 0) continue
    const apart = sumBelow / below - (total - sumBelow) / above
    const variance = below * above * apart ** 2
    if (variance > best * (1 + 1e-9)) {
      best = variance
      first = bin
    }
    // Between two separate heaps every level is as good: the middle one is taken.
    if (variance >= best * (1 - 1e-9)) last = bin
  }
  return least + ((greatest - least) * ((first + last) / 2 + 1)) / BINS
}
