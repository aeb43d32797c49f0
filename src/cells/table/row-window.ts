/** What is drawn of a long table: rows of one height, those in view and some beyond, and the row in hand. */

/** The height of a row, in CSS px: a field of 44 px on its rule. */
export const ROW_HEIGHT = 45
/** Rows drawn above and below those in view, so that a key or a turn of the wheel finds them there. */
const BEYOND = 8

export interface Viewport {
  /** How far the rows are scrolled, and how much of them is seen, in px. */
  readonly top: number
  readonly height: number
}

/** The places of the rows to draw, in order. */
export function rowsToDraw(count: number, { top, height }: Viewport, inHand: number): number[] {
  const first = Math.max(0, Math.floor(top / ROW_HEIGHT) - BEYOND)
  const last = Math.min(count, Math.ceil((top + height) / ROW_HEIGHT) + BEYOND)
  const rows = Array.from({ length: Math.max(0, last - first) }, (_, at) => first + at)
  if (inHand < 0 || inHand >= count || (inHand >= first && inHand < last)) return rows
  return inHand < first ? [inHand, ...rows] : [...rows, inHand]
}

/** How far to scroll for a row to be seen whole; undefined where it is. */
export function scrollFor(row: number, { top, height }: Viewport): number | undefined {
  const start = row * ROW_HEIGHT
  if (start < top) return start
  return start + ROW_HEIGHT > top + height ? start + ROW_HEIGHT - height : undefined
}
