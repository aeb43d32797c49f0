import type { Box, Point } from './geometry.ts'

export const TEXT_SIZE = 13
/** Extent of a line of text above and below its baseline, in pixels. */
export const ASCENT = 10.5
export const DESCENT = 3.5

/**
 * Character widths as fractions of the font size: the wider of the app's font and the usual fallback sans-serif,
 * with a small allowance.
 */
const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[ijl.,:;'|!\s]/, 0.3],
  [/[ftr()/-]/, 0.38],
  [/[mwMW%@]/, 0.92],
  [/[A-Z]/, 0.74],
  [/[\d×+±=−]/, 0.63],
  [/°/, 0.42],
]

/** An upper estimate of the width of a line of text in pixels, computed without a page. */
export const textWidth = (text: string): number =>
  TEXT_SIZE * [...text].reduce((sum, sign) => sum + (WIDTHS.find(([signs]) => signs.test(sign))?.[1] ?? 0.58), 0)

/** A line of text with its position. */
export interface Lettering {
  readonly text: string
  readonly at: Point
  readonly anchor: 'start' | 'middle' | 'end'
  /** Turned to be read from the right, as the figures of vertical dimensions are. */
  readonly upright?: boolean
  readonly bold?: boolean
}

/** How much wider bold text is at most. */
export const BOLD = 1.12

/** The bounding box of a line of text. */
export function letteringBox({ text, at, anchor, upright, bold }: Lettering): Box {
  const width = textWidth(text) * (bold ? BOLD : 1)
  const before = anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2
  return upright
    ? { left: at.x - ASCENT, right: at.x + DESCENT, bottom: at.y + before, top: at.y + before - width }
    : { left: at.x - before, right: at.x - before + width, top: at.y - ASCENT, bottom: at.y + DESCENT }
}
