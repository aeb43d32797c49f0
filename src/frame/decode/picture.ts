/** The samples of a picture, row by row from the top, the channels of a pixel side by side. */
export interface Picture {
  readonly width: number
  readonly height: number
  /** 1 for grey, 3 for red, green and blue; alpha is left out. */
  readonly channels: 1 | 3
  readonly bits: 8 | 16
  readonly samples: Uint8Array | Uint16Array
}

/** What a PNG says of its colours without a profile. */
export interface PngColour {
  /** The file has an sRGB chunk. */
  readonly srgb: boolean
  /** The exponent of the gAMA chunk: a sample is the light to this power. */
  readonly gamma: number | undefined
  /** White, red, green and blue of the cHRM chunk as x, y. */
  readonly chromaticities: readonly (readonly [number, number])[] | undefined
}

/** A picture as it lies in its file, and what else the file says of it. */
export interface Decoded {
  readonly picture: Picture
  /** The embedded ICC profile. */
  readonly profile: Uint8Array | undefined
  /** A TIFF structure with the Exif fields: the APP1 or eXIf block, or the TIFF file itself. */
  readonly exif: Uint8Array | undefined
  readonly png: PngColour | undefined
  readonly warnings: readonly string[]
}

export const isLittleEndian = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1

/** Exchanges the two bytes of every 16-bit sample where they lie. */
export function swapBytes(bytes: Uint8Array): void {
  for (let i = 0; i + 1 < bytes.length; i += 2) {
    const first = bytes[i] as number
    bytes[i] = bytes[i + 1] as number
    bytes[i + 1] = first
  }
}

/** Samples of fewer than 8 bits, each row from a byte's border, the first in the highest bits; one byte a sample comes out. */
export function unpackBits(
  packed: Uint8Array,
  width: number,
  height: number,
  bits: number,
  scaled: boolean,
): Uint8Array {
  const samples = new Uint8Array(width * height)
  const stride = Math.ceil((width * bits) / 8)
  const most = (1 << bits) - 1
  const scale = scaled ? 255 / most : 1
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at++) {
      const bit = x * bits
      const byte = packed[y * stride + (bit >> 3)] as number
      samples[at] = ((byte >> (8 - bits - (bit & 7))) & most) * scale
    }
  return samples
}
