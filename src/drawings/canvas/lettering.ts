import type { Box, Point } from './geometry.ts'

export const TEXT_SIZE = 13
/** Above and below the line the letters stand on. */
export const ASCENT = 10.5
export const DESCENT = 3.5

/**
 * Widths in shares of the size: of the app's own font or of the sans-serif most machines fall back to, the wider of
 * the two, and a little more.
 */
const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[ijl.,:;'|!\s]/, 0.3],
  [/[ftr()/-]/, 0.38],
  [/[mwMW%@]/, 0.92],
  [/[A-Z]/, 0.74],
  [/[\d×+±=−]/, 0.63],
  [/°/, 0.42],
]

/** How wide a line of text is at most, measured without a page. */
export const textWidth = (text: string): number =>
  TEXT_SIZE * [...text].reduce((sum, sign) => sum + (WIDTHS.find(([signs]) => signs.test(sign))?.[1] ?? 0.58), 0)

/** A line of text in its place. */
export interface Lettering {
  readonly text: string
  readonly at: Point
  readonly anchor: 'start' | 'middle' | 'end'
  /** Read from the right, as the figures of upright dimensions are. */
  readonly upright?: boolean
}

/** The box a line of text fills. */
export function letteringBox({ text, at, anchor, upright }: Lettering): Box {
  const width = textWidth(text)
  const before = anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2
  return upright
    ? { left: at.x - ASCENT, right: at.x + DESCENT, bottom: at.y + before, top: at.y + before - width }
    : { left: at.x - before, right: at.x - before + width, top: at.y - ASCENT, bottom: at.y + DESCENT }
}
