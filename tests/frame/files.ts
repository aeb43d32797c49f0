import { deflateSync, crc32 as nodeCrc } from 'node:zlib'

/** A made picture: samples row by row, channels side by side. */
export interface Made {
  readonly width: number
  readonly height: number
  readonly channels: number
  readonly bits: 8 | 16
  readonly samples: Uint8Array | Uint16Array
}

/** Makes a picture from codes, which are rounded and clipped. */
export function make(
  width: number,
  height: number,
  channels: number,
  bits: 8 | 16,
  code: (x: number, y: number, channel: number) => number,
): Made {
  const samples = bits === 16 ? new Uint16Array(width * height * channels) : new Uint8Array(width * height * channels)
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (let c = 0; c < channels; c++) samples[at++] = Math.min(2 ** bits - 1, Math.max(0, Math.round(code(x, y, c))))
  return { width, height, channels, bits, samples }
}

const bytesOf = ({ samples, bits }: Made, little: boolean): Uint8Array => {
  if (bits === 8) return Uint8Array.from(samples)
  const view = new DataView(new ArrayBuffer(samples.length * 2))
  samples.forEach((sample, i) => {
    view.setUint16(2 * i, sample, little)
  })
  return new Uint8Array(view.buffer)
}

const joined = (parts: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts))
const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

// PNG

export interface PngOptions {
  readonly interlaced?: boolean
  /** The filter of each row, in turn. */
  readonly filters?: readonly number[]
  readonly chunks?: readonly (readonly [type: string, body: Uint8Array])[]
  /** 1, 2 or 4: samples are packed; those of the picture are below 2 to this power. */
  readonly depth?: number
  readonly colourType?: number
}

export function chunk(type: string, body: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + body.length)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, body.length)
  bytes.set(ascii(type), 4)
  bytes.set(body, 8)
  view.setUint32(8 + body.length, crcOf(bytes.subarray(4, 8 + body.length)))
  return bytes
}

function crcOf(bytes: Uint8Array): number {
  if (typeof nodeCrc === 'function') return nodeCrc(bytes)
  let c = 0xffffffff
  for (const byte of bytes) {
    c ^= byte
    for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  }
  return (c ^ 0xffffffff) >>> 0
}

export const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10)

export function header(
  width: number,
  height: number,
  depth: number,
  colourType: number,
  interlaced = false,
): Uint8Array {
  const view = new DataView(new ArrayBuffer(13))
  view.setUint32(0, width)
  view.setUint32(4, height)
  view.setUint8(8, depth)
  view.setUint8(9, colourType)
  view.setUint8(12, interlaced ? 1 : 0)
  return new Uint8Array(view.buffer)
}

const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const

/** Writes a PNG as its specification says (W3C, third edition), without a library. */
export function png(made: Made, options: PngOptions = {}): Uint8Array {
  const { width, height, channels, bits } = made
  const { interlaced = false, filters = [0], chunks = [], depth = bits } = options
  const colourType = options.colourType ?? ([0, 0, 4, 2, 6][channels] as number)
  const passes = interlaced ? PASSES : ([[0, 0, 1, 1]] as const)
  const rows = passes.flatMap(([left, top, across, down]) => passRows(made, left, top, across, down, depth, filters))
  return joined([
    SIGNATURE,
    chunk('IHDR', header(width, height, depth, colourType, interlaced)),
    ...chunks.map(([type, body]) => chunk(type, body)),
    chunk('IDAT', new Uint8Array(deflateSync(joined(rows)))),
    chunk('IEND', new Uint8Array(0)),
  ])
}

function passRows(
  made: Made,
  left: number,
  top: number,
  across: number,
  down: number,
  depth: number,
  filters: readonly number[],
): Uint8Array[] {
  const { width, height, channels, samples } = made
  const rows: Uint8Array[] = []
  let above: Uint8Array | undefined
  for (let y = top, row = 0; y < height; y += down, row++) {
    if (left >= width) break
    const values: number[] = []
    for (let x = left; x < width; x += across)
      for (let c = 0; c < channels; c++) values.push(samples[(y * width + x) * channels + c] as number)
    const line = packed(values, depth)
    rows.push(filtered(line, above, filters[row % filters.length] as number, Math.max(1, (channels * depth) >> 3)))
    above = line
  }
  return rows
}

function packed(values: readonly number[], depth: number): Uint8Array {
  if (depth === 16) return Uint8Array.from(values.flatMap((value) => [value >> 8, value & 255]))
  const bytes = new Uint8Array(Math.ceil((values.length * depth) / 8))
  values.forEach((value, i) => {
    const bit = i * depth
    bytes[bit >> 3] = (bytes[bit >> 3] as number) | (value << (8 - depth - (bit & 7)))
  })
  return bytes
}

function filtered(line: Uint8Array, above: Uint8Array | undefined, filter: number, unit: number): Uint8Array {
  const out = new Uint8Array(line.length + 1)
  out[0] = filter
  line.forEach((value, i) => {
    const [a, b, c] = [line[i - unit] ?? 0, above?.[i] ?? 0, i < unit ? 0 : (above?.[i - unit] ?? 0)]
    const p = a + b - c
    const [pa, pb, pc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)]
    const paeth = pa <= pb && pa <= pc ? a : pb <= pc ? b : c
    out[i + 1] = value - ([0, a, b, (a + b) >> 1, paeth][filter] as number)
  })
  return out
}

export const gama = (gamma: number): [string, Uint8Array] => {
  const view = new DataView(new ArrayBuffer(4))
  view.setUint32(0, Math.round(gamma * 100_000))
  return ['gAMA', new Uint8Array(view.buffer)]
}

export const chrm = (points: readonly (readonly [number, number])[]): [string, Uint8Array] => {
  const view = new DataView(new ArrayBuffer(32))
  points.flat().forEach((value, i) => {
    view.setUint32(4 * i, Math.round(value * 100_000))
  })
  return ['cHRM', new Uint8Array(view.buffer)]
}

export const iccp = (profile: Uint8Array): [string, Uint8Array] => [
  'iCCP',
  joined([ascii('test\0\0'), new Uint8Array(deflateSync(profile))]),
]

// TIFF

export interface TiffOptions {
  readonly little?: boolean
  readonly compression?: 'none' | 'lzw' | 'deflate'
  readonly predictor?: boolean
  readonly rowsPerStrip?: number
  readonly tile?: readonly [width: number, height: number]
  readonly planar?: boolean
  readonly photometric?: number
  readonly extra?: number
  /** Further fields: tag, type, values; or bytes for type 7. */
  readonly fields?: readonly (readonly [tag: number, type: number, values: readonly number[] | Uint8Array])[]
  /** Fields of an Exif directory. */
  readonly exif?: readonly ExifField[]
}

export type ExifField = readonly [tag: number, type: number, values: readonly number[] | string]

/** Writes a TIFF as its specification says (TIFF 6.0), without a library. */
export function tiff(made: Made, options: TiffOptions = {}): Uint8Array {
  const { width, height, channels, bits } = made
  const { little = true, compression = 'none', predictor = false, planar = false, tile, extra = 0 } = options
  const [blockWidth, blockHeight] = tile ?? [width, options.rowsPerStrip ?? height]
  const blocks: Uint8Array[] = []
  for (const plane of planar ? Array.from({ length: channels }, (_, i) => i) : [-1])
    for (let top = 0; top < height; top += blockHeight)
      for (let left = 0; left < width; left += blockWidth) {
        const rows = tile ? blockHeight : Math.min(blockHeight, height - top)
        const block = blockOf(made, left, top, blockWidth, rows, plane, predictor)
        blocks.push(compressed(bytesOf(block, little), compression))
      }
  const samples = Array.from({ length: channels }, () => bits as number)
  const offsetTag = tile ? 324 : 273
  const fields: [number, number, readonly number[] | Uint8Array][] = [
    [256, 4, [width]],
    [257, 4, [height]],
    [258, 3, samples],
    [259, 3, [{ none: 1, lzw: 5, deflate: 8 }[compression]]],
    [262, 3, [options.photometric ?? (channels - extra >= 3 ? 2 : 1)]],
    [offsetTag, 4, blocks.map(() => 0)],
    [277, 3, [channels]],
    ...(tile
      ? ([
          [322, 3, [tile[0]]],
          [323, 3, [tile[1]]],
        ] as [number, number, number[]][])
      : ([[278, 4, [blockHeight]]] as [number, number, number[]][])),
    [tile ? 325 : 279, 4, blocks.map((block) => block.length)],
    [284, 3, [planar ? 2 : 1]],
    ...(predictor ? ([[317, 3, [2]]] as [number, number, number[]][]) : []),
    ...(extra > 0 ? ([[338, 3, Array.from({ length: extra }, () => 2)]] as [number, number, number[]][]) : []),
    ...((options.fields ?? []) as [number, number, readonly number[] | Uint8Array][]),
  ]
  return layOut(fields, options.exif, blocks, offsetTag, little)
}

const SIZES: Record<number, number> = { 1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 7: 1, 10: 8 }

/** A TIFF structure with Exif fields alone, as it is in a JPEG’s APP1 and a PNG’s eXIf. */
export const exifBlock = (fields: readonly ExifField[], main: readonly ExifField[] = [], little = true): Uint8Array =>
  layOut(
    main.map(([tag, type, values]) => [tag, type, valuesOf(values)]),
    fields,
    [],
    0,
    little,
  )

const valuesOf = (values: readonly number[] | string): readonly number[] | Uint8Array =>
  typeof values === 'string' ? ascii(`${values}\0`) : values

function layOut(
  own: readonly (readonly [number, number, readonly number[] | Uint8Array])[],
  exif: readonly ExifField[] | undefined,
  blocks: readonly Uint8Array[],
  offsetTag: number,
  little: boolean,
): Uint8Array {
  const fields = [...own, ...(exif ? [[0x8769, 4, [0]] as [number, number, number[]]] : [])].sort((a, b) => a[0] - b[0])
  const inner = (exif ?? [])
    .map(([tag, type, values]) => [tag, type, valuesOf(values)] as const)
    .sort((a, b) => a[0] - b[0])
  const sizeOf = (list: readonly (readonly [number, number, readonly number[] | Uint8Array])[]): number =>
    list.reduce((sum, [, type, values]) => sum + 12 + padded(lengthOf(type, values)), 6)
  const exifAt = 8 + sizeOf(fields)
  let at = exifAt + (exif ? sizeOf(inner) : 0)
  const offsets = blocks.map((block) => {
    const place = at
    at += block.length
    return place
  })
  const bytes = new Uint8Array(at)
  const view = new DataView(bytes.buffer)
  bytes.set(ascii(little ? 'II' : 'MM'))
  view.setUint16(2, 42, little)
  view.setUint32(4, 8, little)
  const known = fields.map(
    ([tag, type, values]) =>
      [tag, type, tag === offsetTag && blocks.length > 0 ? offsets : tag === 0x8769 ? [exifAt] : values] as const,
  )
  writeDirectory(view, bytes, 8, known, little)
  if (exif) writeDirectory(view, bytes, exifAt, inner, little)
  for (const [i, block] of blocks.entries()) bytes.set(block, offsets[i])
  return bytes
}

const lengthOf = (type: number, values: readonly number[] | Uint8Array): number =>
  type === 5 || type === 10 ? values.length * 4 : values.length * (SIZES[type] as number)
const padded = (length: number): number => (length > 4 ? length + (length % 2) : 0)

function writeDirectory(
  view: DataView,
  bytes: Uint8Array,
  start: number,
  fields: readonly (readonly [number, number, readonly number[] | Uint8Array])[],
  little: boolean,
): void {
  view.setUint16(start, fields.length, little)
  let data = start + 6 + 12 * fields.length
  fields.forEach(([tag, type, values], i) => {
    const at = start + 2 + 12 * i
    const length = lengthOf(type, values)
    view.setUint16(at, tag, little)
    view.setUint16(at + 2, type, little)
    view.setUint32(at + 4, type === 5 || type === 10 ? values.length / 2 : values.length, little)
    let to = at + 8
    if (length > 4) {
      view.setUint32(to, data, little)
      to = data
      data += padded(length)
    }
    if (values instanceof Uint8Array) bytes.set(values, to)
    else
      values.forEach((value, k) => {
        if (type === 3) view.setUint16(to + 2 * k, value, little)
        else if (type === 1 || type === 7) view.setUint8(to + k, value)
        else if (type === 10) view.setInt32(to + 4 * k, value, little)
        else view.setUint32(to + 4 * k, value, little)
      })
  })
}

/** A strip or tile, filled up at the right and below with the last pixel, differences taken along its rows. */
function blockOf(
  made: Made,
  left: number,
  top: number,
  width: number,
  height: number,
  plane: number,
  predictor: boolean,
): Made {
  const channels = plane < 0 ? made.channels : 1
  const block = make(width, height, channels, made.bits, (x, y, c) => {
    const [column, row] = [Math.min(left + x, made.width - 1), Math.min(top + y, made.height - 1)]
    return made.samples[(row * made.width + column) * made.channels + (plane < 0 ? c : plane)] as number
  })
  if (predictor)
    for (let y = 0; y < height; y++)
      for (let i = width * channels - 1; i >= channels; i--) {
        const at = y * width * channels + i
        block.samples[at] = (block.samples[at] as number) - (block.samples[at - channels] as number)
      }
  return block
}

const compressed = (bytes: Uint8Array, compression: 'none' | 'lzw' | 'deflate'): Uint8Array =>
  compression === 'none' ? bytes : compression === 'lzw' ? lzw(bytes) : new Uint8Array(deflateSync(bytes))

/** The LZW of TIFF 6.0, section 13. */
function lzw(bytes: Uint8Array): Uint8Array {
  const out: number[] = []
  let [hold, held, width] = [0, 0, 9]
  const put = (code: number): void => {
    hold = (hold << width) | code
    held += width
    while (held >= 8) {
      held -= 8
      out.push((hold >>> held) & 255)
      hold &= (1 << held) - 1
    }
  }
  let table = new Map<string, number>()
  let next = 258
  put(256)
  let run = ''
  for (const byte of bytes) {
    const longer = run + String.fromCharCode(byte)
    if (longer.length === 1 || table.has(longer)) {
      run = longer
      continue
    }
    put(run.length === 1 ? run.charCodeAt(0) : (table.get(run) as number))
    table.set(longer, next++)
    if (next === 4095) {
      put(256)
      table = new Map()
      next = 258
      width = 9
    } else if (next === 512 || next === 1024 || next === 2048) width++
    run = String.fromCharCode(byte)
  }
  if (run !== '') put(run.length === 1 ? run.charCodeAt(0) : (table.get(run) as number))
  // The decoder makes an entry for the last code as well.
  if (next === 511 || next === 1023 || next === 2047) width++
  put(257)
  if (held > 0) out.push((hold << (8 - held)) & 255)
  return Uint8Array.from(out)
}

// ICC

/** A matrix/TRC or grey profile. Curves: an exponent, or a table of 16-bit values, or parametric numbers. */
export interface ProfileParts {
  readonly space?: string
  readonly kind?: string
  readonly connection?: string
  readonly description?: string
  /** Columns for red, green and blue, XYZ. */
  readonly columns?: readonly (readonly [number, number, number])[]
  readonly curve?: { exponent: number } | { table: readonly number[] } | { kind: number; numbers: readonly number[] }
  readonly extra?: readonly string[]
}

export function profile(parts: ProfileParts): Uint8Array {
  const {
    space = 'RGB ',
    kind = 'mntr',
    connection = 'XYZ ',
    description = 'test',
    columns,
    curve = { exponent: 1 },
  } = parts
  const tags: [string, Uint8Array][] = [
    ['desc', joined([ascii('desc'), u32(0), u32(description.length + 1), ascii(`${description}\0`)])],
  ]
  for (const [i, column] of (columns ?? []).entries())
    tags.push([
      ['rXYZ', 'gXYZ', 'bXYZ'][i] as string,
      joined([ascii('XYZ '), u32(0), ...column.map((value) => u32(Math.round(value * 65536)))]),
    ])
  for (const tag of space === 'GRAY' ? ['kTRC'] : ['rTRC', 'gTRC', 'bTRC']) tags.push([tag, curveTag(curve)])
  for (const tag of parts.extra ?? []) tags.push([tag, joined([ascii('mft2'), u32(0), u32(0)])])
  let at = 132 + 12 * tags.length
  const table: Uint8Array[] = []
  const bodies: Uint8Array[] = []
  for (const [name, body] of tags) {
    const full = joined([body, new Uint8Array((4 - (body.length % 4)) % 4)])
    table.push(joined([ascii(name), u32(at), u32(body.length)]))
    bodies.push(full)
    at += full.length
  }
  const head = new Uint8Array(128)
  head.set(u32(at), 0)
  head.set(u32(0x02400000), 8)
  head.set(ascii(kind), 12)
  head.set(ascii(space), 16)
  head.set(ascii(connection), 20)
  head.set(ascii('acsp'), 36)
  return joined([head, u32(tags.length), ...table, ...bodies])
}

function curveTag(curve: NonNullable<ProfileParts['curve']>): Uint8Array {
  if ('exponent' in curve)
    return curve.exponent === 1
      ? joined([ascii('curv'), u32(0), u32(0)])
      : joined([ascii('curv'), u32(0), u32(1), u16(Math.round(curve.exponent * 256))])
  if ('table' in curve) return joined([ascii('curv'), u32(0), u32(curve.table.length), ...curve.table.map(u16)])
  return joined([
    ascii('para'),
    u32(0),
    u16(curve.kind),
    u16(0),
    ...curve.numbers.map((value) => u32(Math.round(value * 65536))),
  ])
}

function u32(value: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(4))
  view.setInt32(0, value | 0)
  return new Uint8Array(view.buffer)
}

const u16 = (value: number): Uint8Array => Uint8Array.of(value >> 8, value & 255)

/** A JPEG with further segments behind its start. */
export function withSegments(
  jpeg: Uint8Array,
  segments: readonly (readonly [marker: number, body: Uint8Array])[],
): Uint8Array {
  return joined([
    jpeg.subarray(0, 2),
    ...segments.map(([marker, body]) => joined([Uint8Array.of(0xff, marker), u16(body.length + 2), body])),
    jpeg.subarray(2),
  ])
}

export const app1 = (block: Uint8Array): [number, Uint8Array] => [0xe1, joined([ascii('Exif\0\0'), block])]
export const app2 = (icc: Uint8Array): [number, Uint8Array] => [
  0xe2,
  joined([ascii('ICC_PROFILE\0'), Uint8Array.of(1, 1), icc]),
]
