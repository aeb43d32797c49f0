import { FrameError } from '../problem.ts'
import { cutShort, damaged } from './limits.ts'
import * as words from './words.ts'

export interface JpegSegments {
  readonly width: number
  readonly height: number
  readonly components: number
  /** 8 × 8 blocks of all components together. */
  readonly blocks: number
  /** Bytes of entropy-coded data. */
  readonly coded: number
  /** The samples are red, green and blue as they are, not luma and chroma. */
  readonly plainRgb: boolean
  readonly profile: Uint8Array | undefined
  readonly exif: Uint8Array | undefined
  /** The picture alone, without comments and what applications wrote beside it. */
  readonly bare: Uint8Array
}

interface Frame {
  readonly width: number
  readonly height: number
  readonly ids: readonly number[]
  readonly blocks: number
}

const EXIF = [0x45, 0x78, 0x69, 0x66, 0, 0]
const ICC = [...'ICC_PROFILE\0'].map((letter) => letter.charCodeAt(0))
const JFIF = [...'JFIF\0'].map((letter) => letter.charCodeAt(0))
const ADOBE = [...'Adobe'].map((letter) => letter.charCodeAt(0))

const starts = (bytes: Uint8Array, with_: readonly number[]): boolean => with_.every((byte, i) => bytes[i] === byte)

/** Walks through the segments of a JPEG to the end of its picture, without decoding it. Throws FrameError. */
export function readSegments(bytes: Uint8Array): JpegSegments {
  let frame: Frame | undefined
  let exif: Uint8Array | undefined
  let transform: number | undefined
  let jfif = false
  let coded = 0
  const profile: Uint8Array[] = []
  const retained: Uint8Array[] = [bytes.subarray(0, 2)]
  let at = 2
  for (;;) {
    if (at + 2 > bytes.length) throw cutShort('JPEG')
    if (bytes[at] !== 0xff) throw damaged('JPEG', words.noMarker(at))
    const marker = bytes[at + 1] as number
    if (marker === 0xff) {
      at++
      continue
    }
    const start = at
    at += 2
    if (marker === 0xd9) {
      retained.push(bytes.subarray(start, at))
      break
    }
    if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) continue
    const length = at + 2 <= bytes.length ? ((bytes[at] as number) << 8) | (bytes[at + 1] as number) : 0
    if (at + length > bytes.length || at + 2 > bytes.length) throw cutShort('JPEG')
    if (length < 2) throw damaged('JPEG', words.noLength(at))
    const body = bytes.subarray(at + 2, at + length)
    at += length
    if (isFrame(marker)) {
      if (frame) throw new FrameError(words.severalFrames)
      frame = readFrame(marker, body)
    } else if (marker === 0xe1 && !exif && starts(body, EXIF)) exif = body.subarray(EXIF.length)
    else if (marker === 0xe2 && starts(body, ICC)) profile.push(body.subarray(ICC.length))
    else if (marker === 0xe0 && starts(body, JFIF)) jfif = true
    else if (marker === 0xee && starts(body, ADOBE) && body.length >= 12) transform = body[11]
    else if (marker === 0xda) {
      if (!frame) throw damaged('JPEG', words.dataBeforeSize)
      const end = endOfScan(bytes, at)
      coded += end - at
      at = end
    }
    if (marker < 0xe0 || marker > 0xfe) retained.push(bytes.subarray(start, at))
  }
  if (!frame || coded === 0) throw damaged('JPEG', words.noPictureData)
  const { width, height, blocks, ids } = frame
  const plainRgb =
    ids.length === 3 && !jfif && (transform === 0 || (transform === undefined && String.fromCharCode(...ids) === 'RGB'))
  return {
    width,
    height,
    blocks,
    coded,
    plainRgb,
    components: ids.length,
    profile: joined(profile),
    exif,
    bare: concatenated(retained),
  }
}

const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc

/** The data of a scan run up to the next marker that is neither a stuffed byte nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; ; ) {
    at = bytes.indexOf(0xff, at)
    if (at < 0 || at + 1 >= bytes.length) throw cutShort('JPEG')
    const next = bytes[at + 1] as number
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at
    at += next === 0xff ? 1 : 2
  }
}

function readFrame(marker: number, body: Uint8Array): Frame {
  if (marker > 0xc2) {
    const what = marker === 0xc3 ? 'lossless' : marker >= 0xc9 ? 'arithmetic-coded' : 'hierarchical'
    throw new FrameError(words.kindOfJpeg(what))
  }
  const count = body[5] ?? 0
  if (body.length < 6 + 3 * count) throw damaged('JPEG', words.shortHeader)
  if (body[0] !== 8) throw new FrameError(words.jpegBits(body[0]))
  const height = ((body[1] as number) << 8) | (body[2] as number)
  const width = ((body[3] as number) << 8) | (body[4] as number)
  if (count === 4) throw new FrameError(words.jpegCmyk)
  if (count !== 1 && count !== 3) throw damaged('JPEG', words.components(count))
  const parts = Array.from({ length: count }, (_, i) => {
    const [id, sampling] = [body[6 + 3 * i] as number, body[7 + 3 * i] as number]
    const [h, v] = [sampling >> 4, sampling & 15]
    if (h < 1 || h > 4 || v < 1 || v > 4) throw damaged('JPEG', words.componentSampling(i + 1, h, v))
    return { id, h, v }
  })
  if (new Set(parts.map(({ id }) => id)).size < count) throw damaged('JPEG', words.sameComponents)
  const [mostH, mostV] = [Math.max(...parts.map(({ h }) => h)), Math.max(...parts.map(({ v }) => v))]
  const blocks = parts.reduce(
    (sum, { h, v }) => sum + Math.ceil((width * h) / mostH / 8) * Math.ceil((height * v) / mostV / 8),
    0,
  )
  return { width, height, blocks, ids: parts.map(({ id }) => id) }
}

/** A profile larger than a segment comes in numbered parts. */
function joined(parts: readonly Uint8Array[]): Uint8Array | undefined {
  if (parts.length === 0) return undefined
  const ordered = [...parts].sort((one, other) => (one[0] ?? 0) - (other[0] ?? 0))
  const complete = ordered.every((part, i) => part[0] === i + 1 && part[1] === parts.length)
  if (!complete) throw damaged('JPEG', words.profileParts)
  return concatenated(ordered.map((part) => part.subarray(2)))
}

function concatenated(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}
