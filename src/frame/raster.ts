import type { Picture } from './decode/index.ts'

/** A look at a part of a picture: where it starts, and how many pixels of the picture one of the raster takes. */
export interface RasterPart {
  readonly x: number
  readonly y: number
  readonly step: number
  readonly width: number
  readonly height: number
}

/** The most samples each way that are averaged into one pixel of a raster. */
const MOST_AVERAGED = 4

/** The codes of a part of a picture as 8-bit red, green, blue and opacity, to be looked at; transparent out of the picture. */
export function rasterOf(picture: Picture, { x, y, step, width, height }: RasterPart): Uint8ClampedArray<ArrayBuffer> {
  const { channels, bits, samples } = picture
  const raster = new Uint8ClampedArray(width * height * 4)
  const scale = bits === 16 ? 1 / 257 : 1
  const count = Math.min(MOST_AVERAGED, Math.max(1, Math.floor(step)))
  for (let row = 0, to = 0; row < height; row++)
    for (let column = 0; column < width; column++, to += 4) {
      let [red, green, blue, taken] = [0, 0, 0, 0]
      for (let j = 0; j < count; j++)
        for (let i = 0; i < count; i++) {
          const u = Math.floor(x + (column + (i + 0.5) / count) * step)
          const v = Math.floor(y + (row + (j + 0.5) / count) * step)
          if (u < 0 || v < 0 || u >= picture.width || v >= picture.height) continue
          const from = (v * picture.width + u) * channels
          const rest = channels === 1 ? 0 : 1
          red += samples[from] as number
          green += samples[from + rest] as number
          blue += samples[from + 2 * rest] as number
          taken++
        }
      if (taken === 0) continue
      raster[to] = (red * scale) / taken
      raster[to + 1] = (green * scale) / taken
      raster[to + 2] = (blue * scale) / taken
      raster[to + 3] = 255
    }
  return raster
}
