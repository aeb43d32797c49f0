import { FrameError } from '../problem.ts'
import { cutShort, damaged } from './limits.ts'
import * as words from './words.ts'

/** Bytes of one value of each field type of TIFF 6.0. */
const SIZES: Readonly<Record<number, number>> = {
  1: 1,
  2: 1,
  3: 2,
  4: 4,
  5: 8,
  6: 1,
  7: 1,
  8: 2,
  9: 4,
  10: 8,
  11: 4,
  12: 8,
  13: 4,
}

/** The fields of the first directory of a TIFF. */
export interface Directory {
  readonly littleEndian: boolean
  /** The whole numbers of a field; undefined where the file has none. Throws FrameError. */
  numbers(tag: number): number[] | undefined
  /** The first number of a field, or `otherwise`. */
  number(tag: number, otherwise: number): number
  bytes(tag: number): Uint8Array | undefined
  has(tag: number): boolean
}

interface Field {
  readonly type: number
  readonly count: number
  readonly offset: number
}

/** Reads the first directory. Nothing is read or reserved beyond the file. Throws FrameError. */
export function readDirectory(file: Uint8Array): Directory {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength)
  const littleEndian = file[0] === 0x49
  if (file.length < 8) throw cutShort('TIFF')
  const magic = view.getUint16(2, littleEndian)
  if (magic === 43) throw new FrameError(words.bigTiff)
  if (magic !== 42) throw new FrameError(words.maybeRaw)
  const start = view.getUint32(4, littleEndian)
  if (start < 8 || start + 2 > file.length) throw cutShort('TIFF')
  const count = view.getUint16(start, littleEndian)
  if (start + 2 + 12 * count > file.length) throw cutShort('TIFF')
  const fields = new Map<number, Field>()
  for (let i = 0; i < count; i++) {
    const at = start + 2 + 12 * i
    const [tag, type, values] = [
      view.getUint16(at, littleEndian),
      view.getUint16(at + 2, littleEndian),
      view.getUint32(at + 4, littleEndian),
    ]
    const size = (SIZES[type] ?? 0) * values
    if (size === 0 || fields.has(tag)) continue
    fields.set(tag, { type, count: values, offset: size <= 4 ? at + 8 : view.getUint32(at + 8, littleEndian) })
  }
  const placed = (tag: number): Field | undefined => {
    const field = fields.get(tag)
    if (field && field.offset + (SIZES[field.type] as number) * field.count > file.length)
      throw cutShort('TIFF', words.fieldEnds(tag))
    return field
  }
  const numbers = (tag: number): number[] | undefined => {
    const field = placed(tag)
    if (!field) return undefined
    const size = SIZES[field.type] as number
    if (![1, 3, 4, 13].includes(field.type)) throw damaged('TIFF', words.fieldNotWhole(tag))
    return Array.from({ length: field.count }, (_, i) => {
      const at = field.offset + i * size
      if (size === 1) return view.getUint8(at)
      return size === 2 ? view.getUint16(at, littleEndian) : view.getUint32(at, littleEndian)
    })
  }
  return {
    littleEndian,
    numbers,
    number: (tag, otherwise) => numbers(tag)?.[0] ?? otherwise,
    bytes(tag) {
      const field = placed(tag)
      return field && file.subarray(field.offset, field.offset + (SIZES[field.type] as number) * field.count)
    },
    has: (tag) => fields.has(tag),
  }
}
