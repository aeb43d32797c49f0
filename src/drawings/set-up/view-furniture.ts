import type { Canvas } from '../canvas/canvas.ts'
import { type LengthUnit, METRES } from '../canvas/drawing-unit.ts'
import { point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import { barLength, type Scale } from '../canvas/scale.ts'

/** Margin at the edge of the canvas in pixels. */
export const PAD = 4
/** Height in pixels of the row with the title of a view. */
export const TITLE_ROW = 22

/** Writes the title of a view with its scale above it. */
export function viewTitle(canvas: Canvas, text: string, top: number): void {
  const at = point(PAD, top + ASCENT + 2)
  canvas.placeText('view-title', [{ lettering: { text, at, anchor: 'start' } }], {
    left: 0,
    right: canvas.width,
    top,
    bottom: top + TITLE_ROW,
  })
}

/** Draws a scale bar. Unlike the written scale it stays true at any size the drawing is shown. */
export function drawBar(
  canvas: Canvas,
  scale: Scale,
  unit: LengthUnit,
  y: number,
  show: (metres: number) => string,
): void {
  const length = barLength(scale, 90, METRES[unit])
  const end = PAD + length * scale.pxPerMetre
  canvas.lines('thin', 'scale-bar', [
    { from: point(PAD, y), to: point(end, y) },
    { from: point(PAD, y - 4), to: point(PAD, y + 4) },
    { from: point(end, y - 4), to: point(end, y + 4) },
  ])
  const lettering = { text: show(length), at: point(end + 8, y + 4.5), anchor: 'start' as const }
  canvas.placeText('scale-bar', [{ lettering }], { left: 0, right: canvas.width, top: y - 12, bottom: y + 10 })
}
