import { FrameError } from '../problem.ts'
import { inflateInto } from './inflate.ts'
import { cutShort, damaged } from './limits.ts'
import * as words from './words.ts'

export interface PngHeader {
  readonly width: number
  readonly height: number
  readonly depth: number
  readonly colourType: number
  readonly channels: number
  readonly interlaced: boolean
}

export interface PngChunks {
  readonly header: PngHeader
  readonly data: readonly Uint8Array[]
  readonly palette: Uint8Array | undefined
  readonly transparency: boolean
  readonly profile: Uint8Array | undefined
  readonly exif: Uint8Array | undefined
  readonly srgb: boolean
  readonly gamma: number | undefined
  readonly chromaticities: readonly (readonly [number, number])[] | undefined
}

const DEPTHS: Readonly<Record<number, readonly number[]>> = {
  0: [1, 2, 4, 8, 16],
  2: [8, 16],
  3: [1, 2, 4, 8],
  4: [8, 16],
  6: [8, 16],
}
const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 }
/** No profile is larger; what inflates to more is not one. */
const LARGEST_PROFILE = 1 << 24

const CRC = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c
})

function crcOf(bytes: Uint8Array): number {
  let c = 0xffffffff
  for (let i = 0; i < bytes.length; i++) c = (CRC[(c ^ (bytes[i] as number)) & 0xff] as number) ^ (c >>> 8)
  return (c ^ 0xffffffff) >>> 0
}

/** Reads the chunks of a PNG up to its end. The sums of those that carry the picture are checked. Throws FrameError. */
export function readChunks(bytes: Uint8Array): PngChunks {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const found = new Map<string, Uint8Array>()
  const data: Uint8Array[] = []
  for (let at = 8; ; ) {
    if (at + 8 > bytes.length) throw cutShort('PNG')
    const length = view.getUint32(at)
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
    const end = at + 8 + length
    if (end + 4 > bytes.length) throw cutShort('PNG')
    if (type === 'IEND') break
    const body = bytes.subarray(at + 8, end)
    if (type === 'IHDR' || type === 'PLTE' || type === 'IDAT')
      if (crcOf(bytes.subarray(at + 4, end)) !== view.getUint32(end)) throw damaged('PNG', words.chunkSum(type, at))
    if (type === 'IDAT') data.push(body)
    else if (!found.has(type)) found.set(type, body)
    if (found.size > 0 && !found.has('IHDR')) throw damaged('PNG', words.headerFirst)
    at = end + 4
  }
  const header = headerOf(found.get('IHDR'))
  if (data.length === 0) throw damaged('PNG', words.noPictureData)
  return {
    header,
    data,
    palette: found.get('PLTE'),
    transparency: found.has('tRNS'),
    profile: profileOf(found.get('iCCP')),
    exif: found.get('eXIf'),
    srgb: found.has('sRGB'),
    gamma: gammaOf(found.get('gAMA')),
    chromaticities: chromaticitiesOf(found.get('cHRM')),
  }
}

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)

function headerOf(body: Uint8Array | undefined): PngHeader {
  if (body?.length !== 13) throw damaged('PNG', words.headerMissing)
  const view = viewOf(body)
  const [depth, colourType, compression, filter, interlace] = body.subarray(8) as unknown as [
    number,
    number,
    number,
    number,
    number,
  ]
  checkHeader(colourType, depth)
  if (compression !== 0 || filter !== 0 || interlace > 1) throw new FrameError(words.packedOtherwise)
  return {
    width: view.getUint32(0),
    height: view.getUint32(4),
    depth,
    colourType,
    channels: CHANNELS[colourType] as number,
    interlaced: interlace === 1,
  }
}

function profileOf(body: Uint8Array | undefined): Uint8Array | undefined {
  if (!body) return undefined
  const nameEnd = body.indexOf(0)
  if (nameEnd < 1 || nameEnd > 79 || body[nameEnd + 1] !== 0) throw damaged('PNG', words.profilePacked)
  try {
    const target = new Uint8Array(LARGEST_PROFILE)
    return target.slice(0, inflateInto([body.subarray(nameEnd + 2)], target))
  } catch {
    throw damaged('PNG', words.profilePacked)
  }
}

function gammaOf(body: Uint8Array | undefined): number | undefined {
  if (body?.length !== 4) return undefined
  const gamma = viewOf(body).getUint32(0) / 100_000
  if (gamma < 0.1 || gamma > 10) throw new FrameError(words.gamma(gamma))
  return gamma
}

function chromaticitiesOf(body: Uint8Array | undefined): [number, number][] | undefined {
  if (body?.length !== 32) return undefined
  const view = viewOf(body)
  return [0, 8, 16, 24].map((at) => [view.getUint32(at) / 100_000, view.getUint32(at + 4) / 100_000])
}

/** Refuses what no PNG of this kind may be. */
function checkHeader(colourType: number, depth: number): void {
  if (!DEPTHS[colourType]?.includes(depth)) throw new FrameError(words.colourType(depth, colourType))
}
