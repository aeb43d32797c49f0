import { decode } from 'jpeg-js'
import { readSegments } from './jpeg-segments.ts'
import { checkSize, damaged } from './limits.ts'
import type { Decoded } from './picture.ts'
import * as words from './words.ts'

/** More than any picture takes: the size is checked before it is decoded. */
const NO_LIMIT = 1_000_000

/** Decodes a baseline or progressive JPEG, grey or colour. Throws FrameError. */
export function decodeJpeg(bytes: Uint8Array): Decoded {
  const { width, height, components, blocks, coded, plainRgb, profile, exif, bare } = readSegments(bytes)
  // No block takes less than a bit.
  checkSize('JPEG', width, height, 3, coded * 8, blocks)
  let data: Uint8Array
  try {
    ;({ data } = decode(bare, {
      useTArray: true,
      formatAsRGBA: false,
      tolerantDecoding: true,
      // The library drops the fractions of red, green and blue, half a code on average: luma and chroma are taken as they are.
      colorTransform: false,
      maxResolutionInMP: NO_LIMIT,
      maxMemoryUsageInMB: NO_LIMIT,
    }))
  } catch (error) {
    // The library reports faults as an Error; other exceptions are failures inside it and have no message to show.
    const why = (error as Error).constructor === Error ? ` (${(error as Error).message})` : ''
    throw damaged('JPEG', words.notDecoded(why))
  }
  if (components === 3 && !plainRgb) toRgb(data)
  const samples = components === 1 ? everyThird(data) : data
  return {
    picture: { width, height, channels: components === 1 ? 1 : 3, bits: 8, samples },
    profile,
    exif,
    png: undefined,
    warnings: [],
  }
}

/** A grey picture is decoded to three equal channels. */
function everyThird(data: Uint8Array): Uint8Array {
  const samples = new Uint8Array(data.length / 3)
  for (let i = 0; i < samples.length; i++) samples[i] = data[3 * i] as number
  return samples
}

/** From luma and chroma to red, green and blue where they lie (ITU-T T.871, clause 7). */
function toRgb(data: Uint8Array): void {
  const clamped = new Uint8ClampedArray(data.buffer, data.byteOffset, data.length)
  for (let i = 0; i < clamped.length; i += 3) {
    const [luma, blue, red] = [clamped[i] as number, (clamped[i + 1] as number) - 128, (clamped[i + 2] as number) - 128]
    clamped[i] = luma + 1.402 * red
    clamped[i + 1] = luma - 0.344136 * blue - 0.714136 * red
    clamped[i + 2] = luma + 1.772 * blue
  }
}
