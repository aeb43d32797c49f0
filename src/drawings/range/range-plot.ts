import type { Followed, RangeTable } from '../../worksheet/analysis/range-table.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { Canvas } from '../canvas/canvas.ts'
import type { DrawingOptions } from '../canvas/drawing-options.ts'
import { type Point, point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import type { Drawing } from '../canvas/tree.ts'
import { ABOVE, type Axis, BELOW, drawAxes, figuresWidth, MARK_ROW, markAcross, type Plot } from '../plots/axes.ts'
import { describeRange, rangeTableOf } from './describe-range.ts'
import { axisAcross, axisUp, shortened, withNotation } from './range-axes.ts'
import { RANGE_WORDS as WORDS } from './words.ts'

const PAD = 4
const ROW = 18
const NARROWEST = 240
/** Space in pixels between plots, for the figures of the axis. */
const APART = 30

/** Plots results over a range of one given, one plot above the other, with the present value marked in all. */
export function drawRange(table: RangeTable, options: Pick<DrawingOptions, 'width' | 'title'>): Drawing {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? WORDS.title(labelOf(table.given))
  const omissions: string[] = []
  const plots = table.followed.filter((one) => canBePlotted(one, omissions))
  if (plots.length === 0) return nothingDrawn(width, title, omissions, WORDS.nothingToPlot)

  const each = Math.round(Math.min(plots.length > 1 ? 170 : 260, Math.max(120, width * 0.5)))
  const canvas = new Canvas(width)
  const curves = table.isContinuous ? sampled(table, axisAcross(table, [0, 1])) : undefined
  const further = (one: Followed): readonly number[] => {
    const which = table.followed.indexOf(one)
    return (curves ?? []).flatMap(({ values }) => values[which] ?? [])
  }
  const yAxes = plots.map((one) => axisUp(one, [each, 0], further(one)))
  const left = PAD + Math.max(...yAxes.map(figuresWidth))
  const x = axisAcross(table, [left, width - PAD - 10])
  let top = PAD + ROW + ABOVE + MARK_ROW
  plots.forEach((one, which) => {
    const last = which === plots.length - 1
    const bottom = top + each
    const y = axisUp(one, [bottom, top], further(one))
    const shownX = last ? x : { ...x, heading: '', ticks: x.ticks.map(({ value }) => ({ value })) }
    const plot: Plot = { box: { left, right: width - PAD - 10, top, bottom }, x: shownX, y }
    const paper = { left: 0, right: width, top: 0, bottom: bottom + BELOW + PAD }
    letterHead(canvas, one, point(PAD, top - ABOVE - MARK_ROW), paper.right)
    drawAxes(canvas, plot, paper, MARK_ROW)
    markPresent(canvas, plot, table, which === 0)
    drawFollowed(canvas, plot, table, one, curves)
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

/** Writes the name of the result and its present value above the plot. */
function letterHead(canvas: Canvas, { cell, present, unit }: Followed, at: Point, right: number): void {
  const label = labelOf(cell)
  const now = present === undefined ? '' : withNotation(present, unit)
  const fullest = now === '' ? [label] : [WORDS.labelNow(label, now), label]
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
  const figure = withNotation(present, unit)
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
  table: RangeTable,
  followedCell: Followed,
  curves: readonly Sample[] | undefined,
): void {
  const { figures, presentAt } = table
  const { figures: followed } = followedCell
  const points = followed.map((figure, at) => placed(x.place(figures[at] as number), figure, y, box))
  const which = table.followed.indexOf(followedCell)
  const line = curves ? curves.map(({ figure, values }) => placed(x.place(figure), values[which], y, box)) : points
  const runs: Point[][] = [[]]
  for (const one of line)
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

/** A value in pixels; what is beyond the end of a logarithmic axis is not drawn. */
function placed(across: number, figure: number | undefined, y: Axis, box: Plot['box']): Point | undefined {
  const at = figure === undefined ? undefined : point(across, y.place(figure))
  return at && at.y <= box.bottom + 0.01 ? at : undefined
}

interface Sample {
  readonly figure: number
  readonly values: readonly (number | undefined)[]
}

/** The number of places computed between the ends of a range, so that a curve is not drawn as straight lines. */
const SAMPLES = 160

/** A curve that turns more often than once in so many places is computed at more of them. */
const PLACES_PER_TURN = 20
const TIMES_AS_MANY = 8

/** The results between the values of a range, and at them: at more places where one of them oscillates. */
function sampled(table: RangeTable, x: Axis): readonly Sample[] {
  const once = sampledAt(table, x, SAMPLES)
  const turns = Math.max(0, ...table.followed.map((_, which) => turnsOf(once.map(({ values }) => values[which]))))
  return turns * PLACES_PER_TURN > SAMPLES ? sampledAt(table, x, SAMPLES * TIMES_AS_MANY) : once
}

/** How often a curve turns from rising to falling or back. */
function turnsOf(values: readonly (number | undefined)[]): number {
  let turns = 0
  let way = 0
  values.forEach((value, at) => {
    const before = values[at - 1]
    const next = value === undefined || before === undefined ? 0 : Math.sign(value - before)
    if (next === 0) return
    if (way !== 0 && next !== way) turns++
    way = next
  })
  return turns
}

function sampledAt(table: RangeTable, x: Axis, places: number): readonly Sample[] {
  const { figures } = table
  const [from, to] = [Math.min(...figures), Math.max(...figures)]
  const between = Array.from({ length: places + 1 }, (_, at) => x.at(at / places)).filter(
    (figure) => figure > from && figure < to,
  )
  return [...new Set([...figures, ...between])]
    .sort((a, b) => a - b)
    .map((figure) => ({ figure, values: table.at(figure) }))
}

const diamond = ({ x, y }: Point, half: number): readonly Point[] => [
  point(x, y - half),
  point(x + half, y),
  point(x, y + half),
  point(x - half, y),
]
