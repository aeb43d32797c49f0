import { damaged } from './limits.ts'
import * as words from './words.ts'

const CLEAR = 256
const END = 257
const FIRST = 258
const TABLE = 4096

/** The greatest growth of a TIFF’s LZW: strings up to the length of the table, 12 bits each. */
export const MOST_LZW = 1400

/**
 * Unpacks the LZW of TIFF 6.0, section 13 (highest bit first, codes one longer a step early), into `target`
 * and returns how many bytes came out, at most those that fit.
 * Every string of the table is one already written followed by the next byte, so it is stored as a place in the target.
 */
export function unpackLzw(source: Uint8Array, target: Uint8Array): number {
  if (source[0] === 0 && ((source[1] as number) & 1) === 1) throw damaged('TIFF', words.oldLzw)
  const place = new Uint32Array(TABLE)
  const length = new Uint32Array(TABLE)
  let [buffer, bits, at, width, next] = [0, 0, 0, 9, FIRST]
  let [out, before, beforeLength] = [0, 0, 0]
  while (out < target.length) {
    while (bits < width) {
      if (at >= source.length) return out
      buffer = ((buffer & 0xfff) << 8) | (source[at++] as number)
      bits += 8
    }
    bits -= width
    const code = (buffer >>> bits) & ((1 << width) - 1)
    if (code === END) return out
    if (code === CLEAR) {
      next = FIRST
      width = 9
      beforeLength = 0
      continue
    }
    if (beforeLength > 0 && next < TABLE) {
      place[next] = before
      length[next] = beforeLength + 1
      next++
      if (next === (1 << width) - 1 && width < 12) width++
    }
    const start = out
    if (code < CLEAR) target[out++] = code
    else if (code < next) {
      let from = place[code] as number
      const end = Math.min(target.length, out + (length[code] as number))
      while (out < end) target[out++] = target[from++] as number
    } else throw damaged('TIFF', words.lzwCode)
    before = start
    beforeLength = out - start
  }
  return out
}
