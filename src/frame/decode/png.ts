import { inflateInto, MOST_INFLATION, uninflated } from './inflate.ts'
import { checkSize, cutShort, damaged } from './limits.ts'
import { type Decoded, isLittleEndian, type Picture, swapBytes, unpackBits } from './picture.ts'
import { type PngChunks, type PngHeader, readChunks } from './png-chunks.ts'
import { unfilter } from './png-rows.ts'
import * as words from './words.ts'

/** The seven passes of Adam7: where the first pixel is and how far apart they are. */
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const

interface Pass {
  readonly left: number
  readonly top: number
  readonly across: number
  readonly down: number
  readonly width: number
  readonly height: number
  readonly stride: number
}

/** Decodes a PNG of any colour type, depth and interlacing; alpha is left out. Throws FrameError. */
export function decodePng(bytes: Uint8Array): Decoded {
  const chunks = readChunks(bytes)
  const { header, data } = chunks
  const passes = passesOf(header)
  const raw = passes.reduce((sum, { stride, height }) => sum + (stride + 1) * height, 0)
  const coded = data.reduce((sum, part) => sum + part.length, 0)
  checkSize(
    'PNG',
    header.width,
    header.height,
    Math.max(raw / (header.width * header.height), 1),
    coded * MOST_INFLATION,
    raw,
  )
  const picture = toPicture(chunks, samplesOf(header, passes, inflated(data, raw)))
  const { profile, exif, srgb, gamma, chromaticities } = chunks
  return { picture, profile, exif, png: { srgb, gamma, chromaticities }, warnings: warningsOf(chunks) }
}

function warningsOf({ header: { colourType }, transparency }: PngChunks): string[] {
  if (colourType >= 4) return [words.alphaIgnored]
  return transparency ? [words.transparentColours] : []
}

function passesOf({ width, height, channels, depth, interlaced }: PngHeader): Pass[] {
  const passes = interlaced ? PASSES : ([[0, 0, 1, 1]] as const)
  return passes.flatMap(([left, top, across, down]) => {
    const [w, h] = [Math.ceil((width - left) / across), Math.ceil((height - top) / down)]
    return w > 0 && h > 0
      ? [{ left, top, across, down, width: w, height: h, stride: Math.ceil((w * channels * depth) / 8) }]
      : []
  })
}

function inflated(data: readonly Uint8Array[], size: number): Uint8Array {
  const raw = new Uint8Array(size)
  let given: number
  try {
    given = inflateInto(data, raw)
  } catch (error) {
    throw uninflated('PNG', error)
  }
  if (given < size) throw cutShort('PNG')
  return raw
}

/** The samples of all passes in their places, in the machine’s byte order, samples below 8 bits one a byte. */
function samplesOf(header: PngHeader, passes: readonly Pass[], raw: Uint8Array): Uint8Array | Uint16Array {
  const { width, height, channels, depth, interlaced, colourType } = header
  const unit = Math.max(1, (channels * depth) >> 3)
  const one = (pass: Pass, rows: Uint8Array): Uint8Array => {
    unfilter(rows, pass.stride, pass.height, unit)
    return depth < 8 ? unpackBits(rows, pass.width, pass.height, depth, colourType !== 3) : rows
  }
  let bytes: Uint8Array
  if (!interlaced) bytes = one(passes[0] as Pass, raw).subarray(0, width * height * unit)
  else {
    bytes = new Uint8Array(width * height * unit)
    let at = 0
    for (const pass of passes) {
      const size = (pass.stride + 1) * pass.height
      scatter(one(pass, raw.subarray(at, at + size)), pass, bytes, width, unit)
      at += size
    }
  }
  if (depth < 16) return bytes
  if (isLittleEndian) swapBytes(bytes)
  return new Uint16Array(bytes.buffer, bytes.byteOffset, bytes.length / 2)
}

function scatter(from: Uint8Array, pass: Pass, to: Uint8Array, width: number, unit: number): void {
  for (let y = 0, at = 0; y < pass.height; y++)
    for (let x = 0; x < pass.width; x++) {
      const place = ((pass.top + y * pass.down) * width + pass.left + x * pass.across) * unit
      for (let i = 0; i < unit; i++) to[place + i] = from[at++] as number
    }
}

function toPicture({ header, palette }: PngChunks, samples: Uint8Array | Uint16Array): Picture {
  const { width, height, channels, depth, colourType } = header
  const bits = depth === 16 ? 16 : 8
  if (colourType === 3)
    return { width, height, channels: 3, bits: 8, samples: coloured(samples as Uint8Array, palette) }
  if (colourType < 4) return { width, height, channels: channels as 1 | 3, bits, samples }
  const opaque = colourType === 4 ? 1 : 3
  const pixels = width * height
  for (let i = 0, from = 0, to = 0; i < pixels; i++, from++)
    for (let c = 0; c < opaque; c++) samples[to++] = samples[from++] as number
  return { width, height, channels: opaque, bits, samples: samples.subarray(0, pixels * opaque) }
}

function coloured(indices: Uint8Array, palette: Uint8Array | undefined): Uint8Array {
  if (!palette) throw damaged('PNG', words.paletteMissing)
  const samples = new Uint8Array(indices.length * 3)
  for (let i = 0; i < indices.length; i++) {
    const entry = 3 * (indices[i] as number)
    if (entry >= palette.length) throw damaged('PNG', words.paletteEntry)
    for (let c = 0; c < 3; c++) samples[3 * i + c] = palette[entry + c] as number
  }
  return samples
}
