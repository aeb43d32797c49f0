import { isTouch } from '../shared/is-touch.ts'

/** The rows of a long table to draw: those in view, some beyond, and the present row. All rows have one height. */

/** The height of a row in CSS pixels, a field and its rule; a finger needs a higher one than a mouse. */
export const ROW_HEIGHT = isTouch ? 45 : 33
/** Rows drawn above and below the view, so that keys and scrolling find them ready; more where the present row may be unfolded. */
const BEYOND = isTouch ? 20 : 8

export interface Viewport {
  /** Scroll position and visible height in pixels. */
  readonly top: number
  readonly height: number
}

/** The numbers of the rows to draw, in order. */
export function rowsToDraw(count: number, { top, height }: Viewport, active: number): number[] {
  const first = Math.max(0, Math.floor(top / ROW_HEIGHT) - BEYOND)
  const last = Math.min(count, Math.ceil((top + height) / ROW_HEIGHT) + BEYOND)
  const rows = Array.from({ length: Math.max(0, last - first) }, (_, at) => first + at)
  if (active < 0 || active >= count || (active >= first && active < last)) return rows
  return active < first ? [active, ...rows] : [...rows, active]
}

/** The scroll position that shows a row completely; undefined if it is already visible. */
export function scrollFor(row: number, { top, height }: Viewport): number | undefined {
  const start = row * ROW_HEIGHT
  if (start < top) return start
  return start + ROW_HEIGHT > top + height ? start + ROW_HEIGHT - height : undefined
}
