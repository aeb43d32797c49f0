import { type FlateError, FlateErrorCode, Unzlib } from 'fflate'
import type { FrameError } from '../problem.ts'
import { cutShort, damaged } from './limits.ts'
import * as words from './words.ts'

/** Small enough that what one piece gives at most, about a thousand times its size, fits into memory. */
const PIECE = 1 << 16

/** No zlib stream grows by more than this. */
export const MOST_INFLATION = 1032

/**
 * Inflates a zlib stream, in parts, into `target` and returns how many bytes came out, at most those that fit.
 * It stops when the target is full, so that a small file cannot fill the memory. Throws what fflate throws.
 */
export function inflateInto(parts: readonly Uint8Array[], target: Uint8Array): number {
  let at = 0
  const stream = new Unzlib((chunk) => {
    const room = target.length - at
    target.set(chunk.length > room ? chunk.subarray(0, room) : chunk, at)
    at += Math.min(room, chunk.length)
  })
  const full = parts.filter((part) => part.length > 0)
  for (const [place, part] of full.entries())
    for (let from = 0; from < part.length && at < target.length; from += PIECE) {
      const to = Math.min(part.length, from + PIECE)
      stream.push(part.subarray(from, to), place === full.length - 1 && to === part.length)
    }
  return at
}

/** What fflate threw, in words. */
export const uninflated = (format: string, error: unknown): FrameError =>
  (error as FlateError).code === FlateErrorCode.UnexpectedEOF
    ? cutShort(format)
    : damaged(format, words.notInflated((error as Error).message))
