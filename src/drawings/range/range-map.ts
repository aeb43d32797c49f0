import type { RangeGrid } from '../../worksheet/analysis/range-table.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { Canvas } from '../canvas/canvas.ts'
import type { DrawingOptions } from '../canvas/drawing-options.ts'
import { corners, grown, type Point, point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import type { Drawing } from '../canvas/tree.ts'
import { ABOVE, BELOW, drawAxes, figuresWidth, MARK_ROW, type Plot } from '../plots/axes.ts'
import { type Curve, letterAtEnd, letterOnCurve } from '../plots/curve-labels.ts'
import { cutAround } from '../plots/cut.ts'
import { isoline } from '../plots/isolines.ts'
import { roundTicks } from '../plots/ticks.ts'
import { axisAcross, withNotation } from './range-axes.ts'
import { RANGE_WORDS as WORDS } from './words.ts'

const PAD = 4
const ROW = 18
const NARROWEST = 240
/** The number of places of a map computed in each direction: fewer of a result that takes long, but enough for a line. */
const MOST_SAMPLES = 41
const LEAST_SAMPLES = 9
/** About as long, in ms, as computing them may take. */
const LONGEST_MS = 250
const MOST_LINES = 9

/** How long it takes, in ms. */
function timed(act: () => unknown): number {
  const began = performance.now()
  act()
  return performance.now() - began
}

/** Draws a result over two givens as a map: lines along which it is the same, and where it is now. */
export function drawRangeMap(grid: RangeGrid, options: Pick<DrawingOptions, 'width' | 'title'>): Drawing {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const { across, up, result } = grid
  const title = options.title ?? WORDS.mapTitle(labelOf(result.cell), labelOf(across.varied), labelOf(up.varied))
  const left = PAD + figuresWidth(axisAcross(up, [200, 0])) + 8
  const top = PAD + ROW + ABOVE + MARK_ROW
  const side = Math.min(width - left - PAD - 10, 360)
  const box = { left, right: width - PAD - 10, top, bottom: top + side }
  const plot: Plot = { box, x: axisAcross(across, [left, box.right]), y: axisAcross(up, [box.bottom, box.top]) }
  // The first of a few is slower than the others.
  const each = Math.min(...[0, 0.5, 1].map((share) => timed(() => grid.at(plot.x.at(share), plot.y.at(share)))))
  const inTime = Math.floor(Math.sqrt(LONGEST_MS / Math.max(1e-3, each)))
  const samples = Math.max(LEAST_SAMPLES, Math.min(MOST_SAMPLES, inTime))
  const shares = Array.from({ length: samples }, (_, at) => at / (samples - 1))
  const values = shares.flatMap((y) => shares.map((x) => grid.at(plot.x.at(x), plot.y.at(y))))
  const known = values.filter((one): one is number => one !== undefined && Number.isFinite(one))
  if (known.length === 0) return nothingDrawn(width, title, [], WORDS.nothingToPlot)
  const [least, most] = [Math.min(...known), Math.max(...known)]
  const omissions = known.length < values.length ? [WORDS.mapGaps(labelOf(result.cell))] : []

  const canvas = new Canvas(width)
  const height = box.bottom + BELOW + PAD
  const paper = { left: 0, right: width, top: 0, bottom: height }
  const head = WORDS.mapHead(labelOf(result.cell), withNotation(least, result.unit), withNotation(most, result.unit))
  canvas.placeText('head', [{ lettering: { text: head, at: point(PAD, PAD + ASCENT + 1), anchor: 'start' } }], paper)
  drawAxes(canvas, plot, paper)
  canvas.outline('thin', 'map', corners(box))
  const on = ({ x, y }: Point): Point =>
    point(box.left + x * (box.right - box.left), box.bottom - y * (box.bottom - box.top))
  // Where the result does not compute there is no line: far below every level.
  const filled = values.map((one) => (one === undefined || !Number.isFinite(one) ? Number.NaN : one))
  const curves = roundTicks(least, most, MOST_LINES).map(
    (level): Curve => ({
      stroke: 'thin',
      className: 'isoline',
      text: withNotation(level, result.unit),
      runs: isoline({ columns: samples, rows: samples, values: filled }, level).map((run) => run.map(on)),
    }),
  )
  const above = { left: PAD, right: width - PAD, top: box.top - ABOVE, bottom: box.top }
  for (const curve of curves)
    if (!letterOnCurve(canvas, curve, curves, grown(box, -2))) letterAtEnd(canvas, curve, above)
  const lettered = canvas.occupied.map((one) => grown(one, 1))
  for (const { stroke, className, runs } of curves) canvas.curves(stroke, className, cutAround(runs, lettered))
  markNow(canvas, plot, grid)
  const description = WORDS.mapDescription(
    labelOf(result.cell),
    labelOf(across.varied),
    labelOf(up.varied),
    withNotation(least, result.unit),
    withNotation(most, result.unit),
  )
  return {
    node: canvas.node(height, title, description),
    title,
    description,
    table: {
      head: [`${labelOf(up.varied)} ↓ ${labelOf(across.varied)} →`, ...across.shown],
      rows: up.shown.map((text, row) => [text, ...(grid.shown[row] ?? [])]),
    },
    omissions,
    width,
    height,
  }
}

/** A cross where both givens are now. */
function markNow(canvas: Canvas, { x, y, box }: Plot, { across, up }: RangeGrid): void {
  if (across.present === undefined || up.present === undefined) return
  const at = point(x.place(across.present), y.place(up.present))
  if (at.x < box.left - 1 || at.x > box.right + 1 || at.y < box.top - 1 || at.y > box.bottom + 1) return
  canvas.lines('thick', 'present', [
    { from: point(at.x - 6, at.y), to: point(at.x + 6, at.y) },
    { from: point(at.x, at.y - 6), to: point(at.x, at.y + 6) },
  ])
}
