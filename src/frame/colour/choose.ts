import type { Decoded } from '../decode/index.ts'
import type { ExifFields } from '../exif.ts'
import { type Encoding, fromChunks, GREY_SRGB, named } from './encoding.ts'
import { readProfile } from './profile.ts'
import * as words from './words.ts'

export interface ChosenEncoding {
  readonly encoding: Encoding
  readonly warnings: readonly string[]
}

/** The encoding of a picture: its profile, else the sRGB chunk, else gAMA and cHRM, else the Exif colour space, else sRGB. Throws FrameError. */
export function chooseEncoding(
  { picture, profile, png }: Decoded,
  colourSpace: ExifFields['colourSpace'],
): ChosenEncoding {
  const { channels } = picture
  const usual = channels === 1 ? GREY_SRGB : named('sRGB')
  if (profile) return { encoding: readProfile(profile, channels), warnings: [] }
  if (png?.srgb) return { encoding: usual, warnings: [] }
  if (png && (png.gamma !== undefined || png.chromaticities)) {
    const encoding = fromChunks(png.gamma, png.chromaticities, channels === 1)
    return encoding ? { encoding, warnings: [] } : { encoding: usual, warnings: [words.primaries] }
  }
  if (channels === 3 && colourSpace === 'Adobe RGB (1998)') return { encoding: named('Adobe RGB (1998)'), warnings: [] }
  if (channels === 3 && colourSpace === 'uncalibrated')
    return {
      encoding: usual,
      warnings: [words.uncalibrated],
    }
  return { encoding: usual, warnings: [] }
}
