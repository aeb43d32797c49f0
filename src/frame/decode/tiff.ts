import { inflateInto, MOST_INFLATION, uninflated } from './inflate.ts'
import { checkSize, cutShort } from './limits.ts'
import { MOST_LZW, unpackLzw } from './lzw.ts'
import { type Decoded, isLittleEndian, type Picture, swapBytes, unpackBits } from './picture.ts'
import { type Layout, readLayout } from './tiff-layout.ts'
import * as words from './words.ts'

const PROFILE = 34675
const GROWTH = { none: 1, lzw: MOST_LZW, deflate: MOST_INFLATION }

/** Decodes the first picture of a TIFF: grey, palette or RGB, in strips or tiles; extra samples are left out. Throws FrameError. */
export function decodeTiff(file: Uint8Array): Decoded {
  const { layout, directory } = readLayout(file)
  const { width, height, samples, channels, bits, offsets, counts } = layout
  const coded = counts.reduce((sum, count, i) => sum + Math.min(count, Math.max(0, file.length - (offsets[i] ?? 0))), 0)
  const needed = Math.ceil((width * samples * bits) / 8) * height
  checkSize('TIFF', width, height, Math.max(needed / (width * height), 1), coded * GROWTH[layout.compression], needed)
  const plain = samplesOf(file, layout)
  return {
    picture: toPicture(layout, plain),
    profile: directory.bytes(PROFILE),
    exif: file,
    png: undefined,
    warnings: samples > channels ? [words.extraChannels] : [],
  }
}

/** The colour samples of the whole picture as bytes in the machine’s order; below 8 bits rows are still packed. */
function samplesOf(file: Uint8Array, layout: Layout): Uint8Array {
  const { width, height, channels, samples, bits, planar, blockWidth, blockHeight, tiled, offsets, counts } = layout
  const perBlock = planar ? 1 : samples
  const rowBytes = (pixels: number): number => Math.ceil((pixels * perBlock * bits) / 8)
  const across = Math.ceil(width / blockWidth)
  const down = Math.ceil(height / blockHeight)
  const output = new Uint8Array(bits < 8 ? rowBytes(width) * height : (width * height * channels * bits) / 8)
  // Whole rows without extra samples are unpacked where they belong.
  const direct = !tiled && perBlock === channels
  const scratch = direct ? output : new Uint8Array(rowBytes(blockWidth) * blockHeight)
  for (let block = 0; block < across * down * (planar ? channels : 1); block++) {
    const plane = Math.floor(block / (across * down))
    const row = Math.floor((block % (across * down)) / across)
    const [left, top] = [(block % across) * blockWidth, row * blockHeight]
    const rows = tiled ? blockHeight : Math.min(blockHeight, height - top)
    const size = rowBytes(blockWidth) * rows
    const target = direct
      ? output.subarray(top * rowBytes(width), top * rowBytes(width) + size)
      : scratch.subarray(0, size)
    const [offset, count] = [offsets[block] as number, counts[block] as number]
    if (offset + count > file.length) throw cutShort('TIFF', words.blockEnds(tiled ? 'tile' : 'strip', block + 1))
    unpack(file.subarray(offset, offset + count), target, layout)
    if (bits === 16 && layout.littleEndian !== isLittleEndian) swapBytes(target)
    if (layout.differences) addUp(target, bits, blockWidth, perBlock)
    if (!direct) place(target, layout, left, top, Math.min(rows, height - top), plane, output)
  }
  return output
}

function unpack(source: Uint8Array, target: Uint8Array, { compression }: Layout): void {
  let given: number
  try {
    if (compression === 'none') {
      given = Math.min(source.length, target.length)
      target.set(source.subarray(0, given))
    } else given = compression === 'lzw' ? unpackLzw(source, target) : inflateInto([source], target)
  } catch (error) {
    throw compression === 'deflate' ? uninflated('TIFF', error) : error
  }
  if (given < target.length) throw cutShort('TIFF')
}

/** Undoes predictor 2 of TIFF 6.0, section 14: each sample is the difference to the one a pixel before. */
function addUp(bytes: Uint8Array, bits: number, width: number, samples: number): void {
  const values = bits === 16 ? wordsOf(bytes) : bytes
  const stride = width * samples
  for (let row = 0; row < values.length; row += stride)
    for (let i = row + samples; i < row + stride; i++)
      values[i] = (values[i] as number) + (values[i - samples] as number)
  if (bits === 16 && values.buffer !== bytes.buffer) bytes.set(new Uint8Array(values.buffer))
}

/** The bytes as 16-bit numbers: themselves, or a copy where they do not start on an even place. */
const wordsOf = (bytes: Uint8Array): Uint16Array =>
  bytes.byteOffset % 2 === 0
    ? new Uint16Array(bytes.buffer, bytes.byteOffset, bytes.length / 2)
    : new Uint16Array(bytes.slice().buffer)

/** Puts the colour samples of a strip or tile where they belong in the picture. */
function place(
  block: Uint8Array,
  layout: Layout,
  left: number,
  top: number,
  rows: number,
  plane: number,
  output: Uint8Array,
): void {
  const { width, channels, samples, bits, planar, blockWidth } = layout
  const pixels = Math.min(blockWidth, width - left)
  if (bits < 8) {
    placePacked(block, layout, left, top, rows, output)
    return
  }
  const unit = bits / 8
  const from = { pixel: (planar ? 1 : samples) * unit, row: blockWidth * (planar ? 1 : samples) * unit }
  const colour = planar ? unit : channels * unit
  for (let y = 0; y < rows; y++) {
    let source = y * from.row
    let to = (((top + y) * width + left) * channels + plane) * unit
    if (from.pixel === channels * unit) {
      output.set(block.subarray(source, source + pixels * from.pixel), to)
      continue
    }
    for (let x = 0; x < pixels; x++, source += from.pixel, to += channels * unit)
      for (let i = 0; i < colour; i++) output[to + i] = block[source + i] as number
  }
}

/** Tiles are a multiple of 16 pixels wide, so that a packed one starts on a byte’s border. */
function placePacked(
  block: Uint8Array,
  layout: Layout,
  left: number,
  top: number,
  rows: number,
  output: Uint8Array,
): void {
  const { width, bits, blockWidth } = layout
  const [stride, blockStride] = [Math.ceil((width * bits) / 8), Math.ceil((blockWidth * bits) / 8)]
  const start = (left * bits) >> 3
  const length = Math.min(blockStride, stride - start)
  for (let y = 0; y < rows; y++)
    output.set(block.subarray(y * blockStride, y * blockStride + length), (top + y) * stride + start)
}

function toPicture({ width, height, channels, bits, whiteIsZero, palette }: Layout, bytes: Uint8Array): Picture {
  const whole = bits === 16 ? wordsOf(bytes) : bits === 8 ? bytes : unpackBits(bytes, width, height, bits, !palette)
  if (palette) return coloured(width, height, whole as Uint8Array, palette)
  if (whiteIsZero) {
    const most = bits === 16 ? 0xffff : 0xff
    for (let i = 0; i < whole.length; i++) whole[i] = most - (whole[i] as number)
  }
  return { width, height, channels, bits: bits === 16 ? 16 : 8, samples: whole }
}

/** Palettes have 16 bits a channel; those that come from 8 bits give 8 bits again. */
function coloured(width: number, height: number, indices: Uint8Array, palette: readonly number[]): Picture {
  const colours = palette.length / 3
  const narrow = palette.every((value) => value % 257 === 0)
  const shifted = !narrow && palette.every((value) => value % 256 === 0)
  const samples = narrow || shifted ? new Uint8Array(indices.length * 3) : new Uint16Array(indices.length * 3)
  for (let i = 0; i < indices.length; i++)
    for (let c = 0; c < 3; c++) {
      const value = palette[c * colours + (indices[i] as number)] as number
      samples[3 * i + c] = narrow || shifted ? value >> 8 : value
    }
  return { width, height, channels: 3, bits: narrow || shifted ? 8 : 16, samples }
}
