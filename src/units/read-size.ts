import { aKind } from './dimension.ts'
import type { DisplayUnit } from './display.ts'
import { type Reading, readTyped, type Typed } from './read.ts'
import { ReadError, readPart, refuseLong } from './read-error.ts'
import * as words from './words.ts'

export interface SizeReading {
  readonly width: Reading
  readonly height: Reading
}

/** Reads a size, `420 x 297`, `420 × 297 mm`, `16.5 in x 11.7 in`: width first. A unit typed once serves both. Throws ReadError. */
export function readSize(typed: string, field?: DisplayUnit): SizeReading {
  refuseLong(typed)
  const cross = /(?<=[\d\s\]a-zµ′″])[x×*](?=\s*\d)|\bby\b/i.exec(typed)
  if (!cross) throw new ReadError(words.sizeExpected, 0, typed.length)
  const rightFrom = cross.index + cross[0].length
  const read = (side: 'left' | 'right', unit: DisplayUnit | undefined): Typed =>
    side === 'left'
      ? readPart(typed, 0, cross.index, (part) => readTyped(part, unit))
      : readPart(typed, rightFrom, typed.length, (part) => readTyped(part, unit))
  let [width, height] = [read('left', undefined), read('right', undefined)]
  const shared = width.unit ?? height.unit
  width = read('left', width.unit ? field : (shared ?? field))
  height = read('right', height.unit ? field : (shared ?? field))
  if (width.reading.dimension !== height.reading.dimension)
    throw new ReadError(
      words.sidesDiffer(aKind(width.reading.dimension), aKind(height.reading.dimension)),
      0,
      typed.length,
    )
  const tolerance = width.reading.tolerance ?? height.reading.tolerance
  const limits = tolerance === undefined ? {} : { tolerance }
  return { width: { ...limits, ...width.reading, offers: [] }, height: { ...limits, ...height.reading, offers: [] } }
}
