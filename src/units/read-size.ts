import { aKind } from './dimension-name.ts'
import type { DisplayUnit } from './display.ts'
import { type Reading, readTyped, type Typed } from './read.ts'
import { ReadError, readPart, refuseLong } from './read-error.ts'
import * as words from './words.ts'

export interface SizeReading {
  readonly width: Reading
  readonly height: Reading
}

/** The sign between width and height: preceded by a figure or its unit, followed by a figure. */
const CROSS = /(?<=[\d\s\]a-zµ′″])[x×*](?=\s*\d)|\bby\b/i
/** The same while there is no height yet. */
const OPEN_CROSS = /(?<=[\d\s])[x×*](?=\s*$)/i

/** The texts on both sides of the sign of a size, also while there is nothing after it; undefined where there is none. */
export function splitSize(text: string): readonly [width: string, height: string] | undefined {
  const cross = CROSS.exec(text) ?? OPEN_CROSS.exec(text)
  return cross ? [text.slice(0, cross.index).trim(), text.slice(cross.index + cross[0].length).trim()] : undefined
}

/** Reads a size, `420 x 297`, `420 × 297 mm`, `16.5 in x 11.7 in`: width first. A unit typed once serves both. Throws ReadError. */
export function readSize(typed: string, field?: DisplayUnit): SizeReading {
  refuseLong(typed)
  const cross = CROSS.exec(typed)
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
