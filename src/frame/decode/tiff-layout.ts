import { FrameError } from '../problem.ts'
import { damaged } from './limits.ts'
import { type Directory, readDirectory } from './tiff-tags.ts'
import * as words from './words.ts'

/** How the samples of a TIFF lie in its file. */
export interface Layout {
  readonly width: number
  readonly height: number
  readonly bits: number
  /** Samples of a pixel, alpha and other extra ones too. */
  readonly samples: number
  /** Of them, those that are colour. */
  readonly channels: 1 | 3
  readonly compression: 'none' | 'lzw' | 'deflate'
  readonly differences: boolean
  readonly littleEndian: boolean
  /** Each channel in separate strips or tiles. */
  readonly planar: boolean
  readonly blockWidth: number
  readonly blockHeight: number
  readonly tiled: boolean
  readonly offsets: readonly number[]
  readonly counts: readonly number[]
  readonly whiteIsZero: boolean
  /** Red, then green, then blue of all colours, 16 bits each. */
  readonly palette: readonly number[] | undefined
}

const RAW = words.raw
const COMPRESSIONS: Readonly<Record<number, Layout['compression']>> = {
  1: 'none',
  5: 'lzw',
  8: 'deflate',
  32946: 'deflate',
}
const COMPRESSION_NAMES: Readonly<Record<number, string>> = {
  2: words.faxCode,
  3: words.faxCode,
  4: words.faxCode,
  6: 'JPEG',
  7: 'JPEG',
  32773: 'PackBits',
  34712: 'JPEG 2000',
  50000: 'Zstandard',
  50001: 'WebP',
}

/** Reads how the first picture of a TIFF lies. Throws FrameError with what to export where it cannot be read rightly. */
export function readLayout(file: Uint8Array): { layout: Layout; directory: Directory } {
  const directory = readDirectory(file)
  const { number, numbers } = directory
  refuseRaw(directory)
  const photometric = number(262, -1)
  refuseColours(photometric, number(332, 1))
  const samples = number(277, 1)
  const channels = photometric === 2 ? 3 : 1
  if (samples < channels || samples > channels + 8) throw damaged('TIFF', words.samplesPerPixel(samples, channels))
  const bits = bitsOf(numbers(258) ?? [1], numbers(339) ?? [1])
  // Below 8 bits a pixel’s samples share a byte.
  if (bits < 8 && samples > 1) throw new FrameError(words.tiffBits(Array(samples).fill(bits).join(', ')))
  const packed = COMPRESSIONS[number(259, 1)]
  if (!packed) {
    const name = COMPRESSION_NAMES[number(259, 1)] ?? words.method(number(259, 1))
    throw new FrameError(words.compression(name))
  }
  const predictor = number(317, 1)
  if (packed !== 'none' && (predictor < 1 || predictor > 2 || (predictor === 2 && bits < 8)))
    throw new FrameError(words.predictor(predictor))
  if (number(266, 1) === 2) throw new FrameError(words.reverseBits)
  const [width, height] = [number(256, 0), number(257, 0)]
  const layout = {
    width,
    height,
    bits,
    samples,
    channels: channels as 1 | 3,
    compression: packed,
    differences: packed !== 'none' && predictor === 2,
    littleEndian: directory.littleEndian,
    planar: number(284, 1) === 2 && samples > 1,
    whiteIsZero: photometric === 0,
    palette: photometric === 3 ? paletteOf(numbers(320), bits) : undefined,
  }
  return { layout: { ...layout, ...blocksOf(directory, layout) }, directory }
}

function refuseRaw({ has, number }: Directory): void {
  const photometric = number(262, -1)
  if (has(50706) || photometric === 32803 || photometric === 34892) throw new FrameError(RAW)
  // A reduced picture first and others below it is how makers lay out their raw files.
  if (has(330) && (number(254, 0) & 1) === 1) throw new FrameError(RAW)
}

function refuseColours(photometric: number, inks: number): void {
  if (photometric >= 0 && photometric <= 3) return
  if (photometric === 5) throw new FrameError(words.inks(inks))
  throw new FrameError(words.colours(photometric))
}

function bitsOf(bits: readonly number[], formats: readonly number[]): number {
  if (formats.some((format) => format === 3)) throw new FrameError(words.floats)
  if (formats.some((format) => format !== 1 && format !== 4)) throw new FrameError(words.signed)
  const [first] = bits as [number]
  if (![1, 2, 4, 8, 16].includes(first) || bits.some((one) => one !== first))
    throw new FrameError(words.tiffBits(bits.join(', ')))
  return first
}

function paletteOf(colours: number[] | undefined, bits: number): number[] {
  if (bits > 8 || colours?.length !== 3 * 2 ** bits) throw damaged('TIFF', words.paletteSize)
  return colours
}

function blocksOf(
  { number, numbers, has }: Directory,
  {
    width,
    height,
    samples,
    bits,
    planar,
    compression,
  }: Pick<Layout, 'width' | 'height' | 'samples' | 'bits' | 'planar' | 'compression'>,
): Pick<Layout, 'blockWidth' | 'blockHeight' | 'tiled' | 'offsets' | 'counts'> {
  const tiled = has(322)
  const blockWidth = tiled ? number(322, 0) : width
  const blockHeight = tiled ? number(323, 0) : Math.min(number(278, height), height)
  if (
    !(width >= 1 && height >= 1 && blockWidth >= 1 && blockHeight >= 1) ||
    (tiled && Math.max(blockWidth, blockHeight) > 1 << 16)
  )
    throw damaged('TIFF', words.parts(width, height, blockWidth, blockHeight))
  const blocks = Math.ceil(width / blockWidth) * Math.ceil(height / blockHeight) * (planar ? samples : 1)
  const offsets = numbers(tiled ? 324 : 273) ?? []
  let counts = numbers(tiled ? 325 : 279)
  // Some writers leave out how long an uncompressed picture in one strip is.
  if (!counts && compression === 'none' && blocks === 1)
    counts = [Math.ceil((blockWidth * (planar ? 1 : samples) * bits) / 8) * blockHeight]
  if (offsets.length < blocks || !counts || counts.length < blocks)
    throw damaged(
      'TIFF',
      words.blockCount(
        blocks,
        tiled ? 'tiles' : 'strips',
        width,
        height,
        Math.min(offsets.length, counts?.length ?? 0),
      ),
    )
  return { blockWidth, blockHeight, tiled, offsets, counts }
}
