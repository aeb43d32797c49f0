import type { Canvas, TextPlacement } from '../canvas/canvas.ts'
import { type Box, type Point, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'

const PAD = 4
const GAP = 12
/** The largest fraction of the width for names. */
const NAMES = 0.38
const LEAST_PLOT = 80

/** The columns of a drawing in rows: names on the left, figures on the right and the plot between them, in pixels. */
export interface RowColumns {
  readonly nameLeft: number
  readonly nameWidth: number
  readonly plotLeft: number
  readonly plotRight: number
  readonly figureRight: number
}

/** Divides the width; the plot gets what names and figures leave. */
export function rowColumns(names: readonly string[], figures: readonly string[], width: number): RowColumns {
  const widest = (texts: readonly string[]) => Math.max(0, ...texts.map(textWidth))
  const figureWidth = widest(figures)
  const most = Math.min(width * NAMES, width - 2 * PAD - 2 * GAP - figureWidth - LEAST_PLOT)
  const nameWidth = Math.max(40, Math.min(widest(names) + 1, most))
  return {
    nameLeft: PAD,
    nameWidth,
    plotLeft: PAD + nameWidth + GAP,
    plotRight: width - PAD - figureWidth - GAP,
    figureRight: width - PAD,
  }
}

/** The baseline of a text whose middle is at a height. */
const onRow = (middle: number): number => middle + ASCENT / 2 - 1

const one = (text: string, at: Point, anchor: 'start' | 'middle' | 'end'): readonly TextPlacement[] => [
  { lettering: { text, at, anchor } },
]

/** Writes a name of one or more rows and a figure, both centred on a height. */
export function letterRow(
  canvas: Canvas,
  className: string,
  columns: RowColumns,
  middle: number,
  name: readonly string[],
  figure: string,
  within: Box,
): void {
  name.forEach((text, at) => {
    const y = onRow(middle) + (at - (name.length - 1) / 2) * NAME_ROW
    canvas.placeText(`${className} name`, one(text, point(columns.nameLeft, y), 'start'), within)
  })
  canvas.placeText(`${className} figure`, one(figure, point(columns.figureRight, onRow(middle)), 'end'), within)
}

export const NAME_ROW = 16
