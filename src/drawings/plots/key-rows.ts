import type { Canvas, Stroke } from '../canvas/canvas.ts'
import { type Point, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'

const SAMPLE = 26
const GAP = 7
const BETWEEN = 18
const KEY_ROW = 19
/** The width of a line's sample in a key with the gap behind it, in pixels. */
export const KEY_SAMPLE = SAMPLE + GAP

/** A line style with its meaning. */
export interface KeyEntry {
  readonly stroke: Stroke
  readonly text: string
}

/** The position of each entry, from left to right in as many rows as necessary. */
function places(entries: readonly KeyEntry[], width: number): readonly Point[] {
  let at = point(0, 0)
  return entries.map(({ text }) => {
    const wide = SAMPLE + GAP + textWidth(text)
    if (at.x > 0 && at.x + wide > width) at = point(0, at.y + KEY_ROW)
    const place = at
    at = point(at.x + wide + BETWEEN, at.y)
    return place
  })
}

/** The height of the key in pixels for a width in pixels. */
export const keyHeight = (entries: readonly KeyEntry[], width: number): number =>
  entries.length === 0 ? 0 : (places(entries, width).at(-1) as Point).y + KEY_ROW

/** Draws a sample of each line style with its meaning. */
export function drawKey(canvas: Canvas, entries: readonly KeyEntry[], left: number, top: number, width: number): void {
  places(entries, width).forEach((place, at) => {
    const { stroke, text } = entries[at] as KeyEntry
    const [x, y] = [left + place.x, top + place.y + KEY_ROW / 2]
    canvas.line(stroke, 'key', point(x, y), point(x + SAMPLE, y))
    const lettering = { text, at: point(x + SAMPLE + GAP, y + ASCENT / 2 - 1), anchor: 'start' as const }
    canvas.placeText('key', [{ lettering }], { left: 0, right: canvas.width, top: 0, bottom: y + KEY_ROW })
  })
}
