import { FrameError } from '../problem.ts'
import { decodeJpeg } from './jpeg.ts'
import type { Decoded } from './picture.ts'
import { decodePng } from './png.ts'
import { decodeTiff } from './tiff.ts'
import * as words from './words.ts'

export type { Decoded, Picture } from './picture.ts'

const RAW = words.raw
const HEIC = words.heic

const exported = (what: string, as = words.pngOrTiff): string => words.exportAs(what, as)

/** Formats that are known and not read: what is found at which byte, and what to do. */
const OTHERS: readonly (readonly [number, string, string])[] = [
  ...['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1'].map(
    (brand) => [4, `ftyp${brand}`, HEIC] as const,
  ),
  [4, 'ftypavif', exported(words.pictureKind('AVIF'))],
  [4, 'ftypcrx ', RAW],
  ...['FUJIFILMCCD-RAW', 'FOVb', '\0MRM', 'IIRO', 'IIRS', 'IIU\0', 'MMOR'].map((mark) => [0, mark, RAW] as const),
  [6, 'HEAPCCDR', RAW],
  [8, 'WEBPVP8', exported(words.pictureKind('WebP'))],
  [0, 'GIF8', exported(words.pictureKind('GIF'))],
  [0, '\xff\x0a', exported(words.pictureKind('JPEG XL'))],
  [4, 'JXL ', exported(words.pictureKind('JPEG XL'))],
  [0, '\xff\x4f\xff\x51', exported(words.pictureKind('JPEG 2000'), 'TIFF')],
  [4, 'jP  ', exported(words.pictureKind('JPEG 2000'), 'TIFF')],
  [0, '8BPS', exported(words.layeredDocument, words.flatTiff)],
  [0, '%PDF', words.pdf],
  [0, 'BM', exported(words.pictureKind('BMP'))],
]

const TIFF_MARKS = ['II*\0', 'MM\0*', 'II+\0', 'MM\0+']

/** Decodes a JPEG, PNG or TIFF, recognised by its first bytes, never by its name. Throws FrameError. */
export function decodePicture(bytes: Uint8Array): Decoded {
  const start = String.fromCharCode(...bytes.subarray(0, 32))
  if (bytes.length === 0) throw new FrameError(words.emptyFile)
  if (start.startsWith('\x89PNG\r\n\x1a\n')) return decodePng(bytes)
  if (start.startsWith('\xff\xd8')) return decodeJpeg(bytes)
  const other = OTHERS.find(([at, mark]) => start.startsWith(mark, at))
  if (other) throw new FrameError(other[2])
  if (TIFF_MARKS.some((mark) => start.startsWith(mark))) return decodeTiff(bytes)
  throw new FrameError(words.notAPicture)
}
