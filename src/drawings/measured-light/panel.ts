import { signedStops } from '../../units/stops.ts'
import type { Canvas, TextPlacement } from '../canvas/canvas.ts'
import { type Box, corners, grown, type Point, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import type { Stops } from '../canvas/measures.ts'
import { type Curve, letterOnCurve } from '../plots/curve-labels.ts'
import { cutAround } from '../plots/cut.ts'
import { fittedText } from '../plots/fitted-text.ts'
import { hatchBelow } from '../plots/hatch-below.ts'
import { isoline, levelsBetween } from '../plots/isolines.ts'
import { extreme, type Fields } from './fields.ts'
import { smoothed } from './smoothed.ts'
import { MEASURED_LIGHT_WORDS as WORDS } from './words.ts'

/** One map: what it is called, its fields, and where it lies. */
export interface Panel {
  readonly className: string
  /** The titles to try, longest first. */
  readonly titles: readonly string[]
  readonly fields: Fields
  readonly step: Stops
  /** The spread allowed, where this map is judged by it. */
  readonly limit: Stops | undefined
  readonly box: Box
}

/** Height of the title above a map, px. */
export const TITLE = 20

/** Where a field’s middle is. */
function middleOf({ box, fields: { columns, rows } }: Panel, at: number): Point {
  const [column, row] = [at % columns, Math.floor(at / columns)]
  return point(
    box.left + ((box.right - box.left) * (column + 0.5)) / columns,
    box.top + ((box.bottom - box.top) * (row + 0.5)) / rows,
  )
}

/** Draws a map with its title: lines of equal light between the middles of its fields, its extremes, and what is beyond the limit. */
export function drawPanel(canvas: Canvas, panel: Panel): void {
  const { box, fields, titles, className } = panel
  const over = { left: box.left - 2, right: box.right + 2, top: box.top - TITLE, bottom: box.top }
  const room = box.right - box.left
  const text = titles.find((title) => textWidth(title) <= room) ?? fittedText(titles.at(-1) ?? '', room)
  canvas.placeText(
    `title ${className}`,
    [{ lettering: { text, at: point(box.left, box.top - 6), anchor: 'start' } }],
    over,
  )
  canvas.outline('thick', `frame ${className}`, corners(box))
  if (fields.columns < 2 || fields.rows < 2) letterFields(canvas, panel)
  else drawContours(canvas, panel)
}

/** The figure of every field, where they have space. */
function letterFields(canvas: Canvas, panel: Panel): void {
  for (const [at, stops] of panel.fields.stops.entries()) {
    const { x, y } = middleOf(panel, at)
    const lettering = { text: signedStops(stops), at: point(x, y + ASCENT / 2), anchor: 'middle' as const }
    canvas.placeText(`field ${panel.className}`, [{ lettering }], panel.box)
  }
}

function drawContours(canvas: Canvas, panel: Panel): void {
  const { box, fields, step, limit, className } = panel
  const grid = smoothed(fields)
  const [last, first] = [fields.stops.length - 1, 0]
  const [upperLeft, lowerRight] = [middleOf(panel, first), middleOf(panel, last)]
  const inner: Box = { left: upperLeft.x, top: upperLeft.y, right: lowerRight.x, bottom: lowerRight.y }
  const on = ({ x, y }: Point): Point =>
    point(inner.left + x * (inner.right - inner.left), inner.bottom - y * (inner.bottom - inner.top))
  const runsAt = (level: number) => isoline(grid, level).map((run) => run.map(on))
  const [greatest, least] = [extreme(fields, 1), extreme(fields, -1)]
  const decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2
  const curves = levelsBetween(least.stops, greatest.stops, step).map(
    (level): Curve => ({
      stroke: level === 0 ? 'thick' : level > 0 ? 'thin' : 'dashed',
      className: `isoline ${className}`,
      text: signedStops(level, decimals),
      runs: runsAt(level),
    }),
  )
  const cut = limit === undefined ? undefined : greatest.stops - limit
  const isBeyond = cut !== undefined && cut > least.stops + 1e-9
  if (isBeyond)
    curves.unshift({ stroke: 'chain', className: `limit ${className}`, text: WORDS.limitLine, runs: runsAt(cut) })
  for (const [which, { at, stops }] of Object.entries({ greatest, least }))
    letterExtreme(canvas, panel, `${which} ${className}`, middleOf(panel, at), signedStops(stops))
  for (const curve of curves) letterOnCurve(canvas, curve, curves, grown(box, -2))
  const lettered = canvas.occupied.map((one) => grown(one, 1))
  for (const { stroke, className: name, runs } of curves) canvas.curves(stroke, name, cutAround(runs, lettered))
  if (isBeyond) canvas.lines('hatch', `beyond-limit ${className}`, hatchBelow(grid, cut, inner, lettered))
}

const MARK = 3.5

/** A cross where it is, and the figure beside it. */
function letterExtreme(canvas: Canvas, { box }: Panel, className: string, at: Point, text: string): void {
  canvas.lines('thin', `${className} mark`, [
    { from: point(at.x - MARK, at.y), to: point(at.x + MARK, at.y) },
    { from: point(at.x, at.y - MARK), to: point(at.x, at.y + MARK) },
  ])
  canvas.placeText(className, around(at, text), grown(box, -1))
}

function* around({ x, y }: Point, text: string): Generator<TextPlacement> {
  for (const far of [7, 11, 16, 24]) {
    yield { lettering: { text, at: point(x + far, y + ASCENT / 2), anchor: 'start' } }
    yield { lettering: { text, at: point(x - far, y + ASCENT / 2), anchor: 'end' } }
    for (const off of [0, textWidth(text) / 2]) {
      yield { lettering: { text, at: point(x + off, y - far), anchor: 'middle' } }
      yield { lettering: { text, at: point(x - off, y + far + ASCENT), anchor: 'middle' } }
    }
  }
}
