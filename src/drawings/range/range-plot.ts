import type { Followed, RangeTable } from '../../worksheet/analysis/range-table.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { Canvas } from '../canvas/canvas.ts'
import type { DrawingOptions } from '../canvas/drawing-options.ts'
import { type Point, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { figureText } from '../canvas/text-figures.ts'
import type { Drawing } from '../canvas/tree.ts'
import {
  ABOVE,
  type Axis,
  apertureAxis,
  BELOW,
  drawAxes,
  figuresWidth,
  linearAxis,
  logAxis,
  MARK_ROW,
  markAcross,
  type Plot,
  type Span,
} from '../plots/axes.ts'
import { describeRange, rangeTableOf } from './describe-range.ts'
import { RANGE_WORDS as WORDS } from './words.ts'

const PAD = 4
const ROW = 18
const NARROWEST = 240
/** Space in pixels between plots, for the figures of the axis. */
const APART = 30
/** Results with a larger ratio of greatest to least get a logarithmic axis. */
const FAR = 200

/** Plots results over a range of one given, one plot above the other, with the present value marked in all. */
export function drawRange(table: RangeTable, options: Pick<DrawingOptions, 'width' | 'title'>): Drawing {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? WORDS.title(labelOf(table.given))
  const omissions: string[] = []
  const plots = table.followed.filter((one) => canBePlotted(one, omissions))
  if (plots.length === 0) return nothingDrawn(width, title, omissions, WORDS.nothingToPlot)

  const each = Math.round(Math.min(plots.length > 1 ? 170 : 260, Math.max(120, width * 0.5)))
  const canvas = new Canvas(width)
  const yAxes = plots.map((one) => upright(one, [each, 0]))
  const left = PAD + Math.max(...yAxes.map(figuresWidth))
  const x = across(table, [left, width - PAD - 10])
  let top = PAD + ROW + ABOVE + MARK_ROW
  plots.forEach((one, which) => {
    const last = which === plots.length - 1
    const bottom = top + each
    const y = upright(one, [bottom, top])
    const shownX = last ? x : { ...x, heading: '', ticks: x.ticks.map(({ value }) => ({ value })) }
    const plot: Plot = { box: { left, right: width - PAD - 10, top, bottom }, x: shownX, y }
    const paper = { left: 0, right: width, top: 0, bottom: bottom + BELOW + PAD }
    letterHead(canvas, one, point(PAD, top - ABOVE - MARK_ROW), paper.right)
    drawAxes(canvas, plot, paper, MARK_ROW)
    markPresent(canvas, plot, table, which === 0)
    drawFollowed(canvas, plot, table, one)
    top = bottom + (last ? 0 : APART) + ROW + ABOVE + MARK_ROW
  })
  const height = top - ROW - ABOVE - MARK_ROW + BELOW + PAD
  const description = describeRange(table)
  return {
    node: canvas.node(height, title, description),
    title,
    description,
    table: rangeTableOf(table),
    omissions,
    width,
    height,
  }
}

function canBePlotted({ cell, figures, measured }: Followed, omissions: string[]): boolean {
  const known = figures.filter((one) => one !== undefined).length
  if (known === 0) omissions.push(WORDS.noFigures(labelOf(cell)))
  else if (known < figures.length)
    omissions.push(WORDS.someMissing(labelOf(cell), figures.length - known, figures.length))
  if (measured) omissions.push(WORDS.measured(labelOf(cell)))
  return known > 0
}

/** The heading of an axis with its unit. */
function heading(label: string, unit: Followed['unit']): string {
  const behind =
    unit?.notation === 'f-number'
      ? WORDS.apertureUnit
      : unit?.notation === 'ratio'
        ? WORDS.ratioUnit
        : (unit?.symbol ?? '')
  return behind === '' ? label : WORDS.withUnit(label, behind)
}

function across(table: RangeTable, span: Span): Axis {
  const { figures, unit, present, byFactors } = table
  const all = present === undefined ? figures : [...figures, present]
  const [from, to] = [Math.min(...all), Math.max(...all)]
  const text = heading(shortened(labelOf(table.given), span[1] - span[0]), unit)
  if (unit.notation === 'f-number') return apertureAxis([from, to], span, text)
  return byFactors && from > 0 ? logAxis([from, to], span, text) : linearAxis([from, to], span, text)
}

/** As many words of a text as fit into a space in pixels. */
function shortened(text: string, room: number): string {
  const words = text.split(' ')
  while (words.length > 1 && textWidth(words.join(' ')) > room - 60) words.pop()
  return words.length === text.split(' ').length ? text : `${words.join(' ')} …`
}

function upright({ figures, present, unit }: Followed, span: Span): Axis {
  const known = [...figures, present].filter((one): one is number => one !== undefined)
  const [least, most] = [Math.min(...known), Math.max(...known)]
  const text = unit ? heading('', unit).replace(/^, /, '') : ''
  return least > 0 && most / least > FAR ? logAxis([least, most], span, text) : linearAxis([least, most], span, text)
}

/** Writes the name of the result and its present value above the plot. */
function letterHead(canvas: Canvas, { cell, present, unit }: Followed, at: Point, right: number): void {
  const label = labelOf(cell)
  const figure = present === undefined ? '' : figureText(present)
  const now =
    unit?.notation === 'f-number'
      ? `f/${figure}`
      : unit?.notation === 'ratio'
        ? `1:${figure}`
        : [figure, unit?.symbol].filter(Boolean).join(' ')
  const fullest = figure === '' ? [label] : [WORDS.labelNow(label, now), label]
  const wordings = [...fullest, shortened(label, right - at.x)]
  const lettering = wordings.map((text) => ({
    lettering: { text, at: point(at.x, at.y + ASCENT - 1), anchor: 'start' as const },
  }))
  canvas.placeText('head', lettering, { left: 0, right, top: at.y - 3, bottom: at.y + ROW })
}

function markPresent(
  canvas: Canvas,
  plot: Plot,
  { present, unit, presentAt, shown }: RangeTable,
  worded: boolean,
): void {
  const { x } = plot
  if (present === undefined || present < x.from * (1 - 1e-9) - 1e-12 || present > x.to * (1 + 1e-9) + 1e-12) return
  const figure =
    unit.notation === 'f-number'
      ? `f/${figureText(present)}`
      : unit.notation === 'ratio'
        ? `1:${figureText(present)}`
        : `${figureText(present)} ${unit.symbol}`.trim()
  const text = presentAt === undefined ? figure : (shown[presentAt] as string)
  markAcross(canvas, plot, {
    className: 'set',
    value: present,
    stroke: 'thin',
    wordings: worded ? [WORDS.now(text), text] : [],
    rows: 1,
    present: true,
  })
}

function drawFollowed(
  canvas: Canvas,
  { x, y, box }: Plot,
  { figures, presentAt }: RangeTable,
  { figures: followed }: Followed,
): void {
  const points = followed.map((figure, at) => {
    const placed = figure === undefined ? undefined : point(x.place(figures[at] as number), y.place(figure))
    // Values below the end of a logarithmic axis are not drawn.
    return placed && placed.y <= box.bottom + 0.01 ? placed : undefined
  })
  const runs: Point[][] = [[]]
  for (const one of points)
    if (one) (runs.at(-1) as Point[]).push(one)
    else runs.push([])
  canvas.curves('thick', 'followed', runs)
  const crowded = points.length > (box.right - box.left) / 8
  points.forEach((one, at) => {
    if (!one || (crowded && at !== presentAt)) return
    canvas.body('thin', at === presentAt ? 'followed-now' : 'followed-at', diamond(one, at === presentAt ? 5 : 2.4), {
      filled: true,
    })
  })
}

const diamond = ({ x, y }: Point, half: number): readonly Point[] => [
  point(x, y - half),
  point(x + half, y),
  point(x, y + half),
  point(x - half, y),
]
