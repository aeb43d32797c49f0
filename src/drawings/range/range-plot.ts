import type { DisplayUnit } from '../../units/index.ts'
import type { Followed, RangeTable } from '../../worksheet/analysis/followed.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { Canvas, type Stroke } from '../canvas/canvas.ts'
import type { DrawingOptions } from '../canvas/drawing-options.ts'
import { type Point, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import type { Drawing } from '../canvas/tree.ts'
import {
  ABOVE,
  type Axis,
  BELOW,
  drawAxes,
  drawFurtherAxis,
  figuresWidth,
  MARK_ROW,
  markAcross,
  type Plot,
} from '../plots/axes.ts'
import { drawKey, KEY_SAMPLE, type KeyEntry, keyHeight } from '../plots/key-rows.ts'
import { describeRange, rangeTableOf } from './describe-range.ts'
import { axisAcross, axisUp, shortened, withNotation } from './range-axes.ts'
import { type Sample, sampled } from './sampled.ts'
import { RANGE_WORDS as WORDS } from './words.ts'

const PAD = 4
const ROW = 18
const NARROWEST = 240
/** Space in pixels between plots, for the figures of the axis. */
const APART = 30
/** Space in pixels between the figures of one scale and the next scale. */
const BETWEEN = 8

/** What the drawing of a plot has been given. */
interface Plotted {
  readonly table: RangeTable
  readonly plots: readonly Followed[]
  readonly curves: readonly Sample[] | undefined
  readonly width: number
  /** All that is known of a result, for the ends of its axis. */
  readonly further: (one: Followed) => readonly number[]
}

/**
 * Plots results over a range of one given, or columns of a table over another: in one plot with a scale for each, or one
 * plot above the other where there is no room for the scales. The present value is marked.
 */
export function drawRange(table: RangeTable, options: Pick<DrawingOptions, 'width' | 'title'>): Drawing {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? WORDS.title(labelOf(table.varied))
  const omissions: string[] = []
  const plots = table.followed.filter((one) => canBePlotted(one, omissions))
  if (plots.length === 0) return nothingDrawn(width, title, omissions, WORDS.nothingToPlot)

  const canvas = new Canvas(width)
  const curves = table.isContinuous ? sampled(table, axisAcross(table, [0, 1])) : undefined
  const further = (one: Followed): readonly number[] => {
    const which = table.followed.indexOf(one)
    return (curves ?? []).flatMap(({ values }) => values[which] ?? [])
  }
  const plotted: Plotted = { table, plots, curves, width, further }
  const height = (plots.length > 1 && !coincide(plotted) && drawTogether(canvas, plotted)) || drawApart(canvas, plotted)
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

/** Two lines nearer than this everywhere, as a share of the height of a plot, are seen as one. */
const ONE_LINE = 0.02

/** Whether the lines of two results would be drawn on one another, as those of proportional results are. */
function coincide({ plots, table, curves, further }: Plotted): boolean {
  const heights = plots.map((one) => {
    const axis = axisUp(one, [0, 1], further(one))
    const which = table.followed.indexOf(one)
    const values = curves ? curves.map((sample) => sample.values[which]) : one.figures
    return values.map((value) => (value === undefined ? Number.NaN : axis.place(value)))
  })
  return heights.some((line, at) =>
    heights
      .slice(at + 1)
      .some((other) => !line.some((place, row) => Math.abs(place - (other[row] as number)) > ONE_LINE)),
  )
}

/** One plot above the other, each under the name of its result; gives the height of the drawing. */
function drawApart(canvas: Canvas, { table, plots, curves, width, further }: Plotted): number {
  const each = Math.round(Math.min(plots.length > 1 ? 170 : 260, Math.max(120, width * 0.5)))
  const left = PAD + Math.max(...plots.map((one) => figuresWidth(axisUp(one, [each, 0], further(one)))))
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
  return top - ROW - ABOVE - MARK_ROW + BELOW + PAD
}

/** The lines of results in one plot, in their order. */
const STROKES: readonly Stroke[] = ['thick', 'dashed', 'chain']
/** The least width of a plot in pixels between its scales. */
const ROOM = 200
/** A scale is shared by results in one unit where each of them spans at least this share of it. */
const SHARED = 0.2
/** Where the scales are, in their order. */
const SIDES = ['left', 'right', 'outer'] as const

interface Scale {
  readonly unit: DisplayUnit | undefined
  readonly results: readonly Followed[]
}

/** The scales of results: one for each, or one for several that have one unit and are comparable in size. */
function scalesOf({ plots, further }: Plotted): readonly Scale[] {
  const span = (results: readonly Followed[]): number => {
    const known = results.flatMap((one) => [...further(one), ...one.figures.filter((figure) => figure !== undefined)])
    return Math.max(...known) - Math.min(...known)
  }
  const scales: Scale[] = []
  for (const one of plots) {
    const at = scales.findIndex(({ unit, results }) => {
      if (unit?.symbol !== one.unit?.symbol || unit?.notation !== one.unit?.notation || unit?.symbol === '')
        return false
      const all = span([...results, one])
      return [...results, one].every((each) => span([each]) >= all * SHARED)
    })
    const scale = scales[at]
    if (scale) scales[at] = { ...scale, results: [...scale.results, one] }
    else scales.push({ unit: one.unit, results: [one] })
  }
  return scales
}

/** All results in one plot, each with a scale that its line's entry in the key names; undefined where it is too narrow. */
function drawTogether(canvas: Canvas, plotted: Plotted): number | undefined {
  const { table, plots, curves, width, further } = plotted
  const scales = scalesOf(plotted)
  const tall = Math.round(Math.min(260, Math.max(170, width * 0.5)))
  const axisOf = ({ results, unit }: Scale, span: readonly [number, number]): Axis =>
    axisUp(
      { figures: results.flatMap(({ figures }) => figures), present: undefined, unit },
      span,
      results.flatMap((one) => [...further(one), ...(one.present === undefined ? [] : [one.present])]),
    )
  const widths = scales.map((scale) => figuresWidth(axisOf(scale, [tall, 0])))
  const left = PAD + (widths[0] as number)
  const right = width - PAD - Math.max(10, sum(widths.slice(1)) + (scales.length - 2) * BETWEEN)
  if (right - left < ROOM) return undefined

  const key = plots.map((one, at): KeyEntry => {
    const side = SIDES[scales.findIndex(({ results }) => results.includes(one))] as (typeof SIDES)[number]
    const scale = scales.length > 1 ? WORDS.scales[side] : ''
    const now = one.present === undefined ? '' : withNotation(one.present, one.unit)
    const label = labelOf(one.cell)
    const said = (shown: string): string => (scale === '' ? shown : WORDS.onScale(shown, scale))
    const wordings = [...(now === '' ? [] : [said(WORDS.labelNow(label, now))]), said(label)]
    const room = width - 2 * PAD - KEY_SAMPLE
    const text = wordings.find((one) => textWidth(one) <= room) ?? said(shortened(label, room - textWidth(scale)))
    return { stroke: STROKES[at] as Stroke, text }
  })
  drawKey(canvas, key, PAD, PAD, width - 2 * PAD)
  const top = PAD + keyHeight(key, width - 2 * PAD) + ABOVE + MARK_ROW
  const bottom = top + tall
  const box = { left, right, top, bottom }
  const x = axisAcross(table, [left, right])
  const paper = { left: 0, right: width, top: 0, bottom: bottom + BELOW + PAD }
  let outwards = right
  scales.forEach((scale, at) => {
    const y = axisOf(scale, [bottom, top])
    const plot: Plot = { box, x, y }
    if (at === 0) {
      drawAxes(canvas, plot, paper, MARK_ROW)
      markPresent(canvas, plot, table, true)
    } else {
      drawFurtherAxis(canvas, plot, outwards, paper, MARK_ROW)
      outwards += (widths[at] as number) + BETWEEN
    }
    for (const one of scale.results)
      drawFollowed(canvas, plot, table, one, curves, STROKES[plots.indexOf(one)] as Stroke)
  })
  return bottom + BELOW + PAD
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0)

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
  stroke: Stroke = 'thick',
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
  if (table.isJoined) canvas.curves(stroke, 'followed', runs)
  if (!table.filledWith) {
    markRows(canvas, points, stroke)
    return
  }
  const crowded = points.length > (box.right - box.left) / 8
  points.forEach((one, at) => {
    if (!one || (crowded && at !== presentAt)) return
    canvas.body('thin', at === presentAt ? 'followed-now' : 'followed-at', diamond(one, at === presentAt ? 5 : 2.4), {
      filled: true,
    })
  })
}

/** Marks where the rows of a table are, each place once: thousands of rows may be on the same pixel. */
function markRows(canvas: Canvas, points: readonly (Point | undefined)[], stroke: Stroke): void {
  const places = new Map(
    points.flatMap((one) => (one ? [[`${Math.round(one.x / 2)} ${Math.round(one.y / 2)}`, one] as const] : [])),
  )
  const [across, up] = MARKS[stroke] ?? [true, true]
  canvas.lines(
    'thin',
    'followed-at',
    [...places.values()].flatMap(({ x, y }) => [
      ...(across ? [{ from: point(x - MARK, y), to: point(x + MARK, y) }] : []),
      ...(up ? [{ from: point(x, y - MARK), to: point(x, y + MARK) }] : []),
    ]),
  )
}

const MARK = 2.6

/** The mark of each line where rows are not joined: a cross, a stroke across, a stroke upwards. */
const MARKS: Readonly<Partial<Record<Stroke, readonly [boolean, boolean]>>> = {
  thick: [true, true],
  dashed: [true, false],
  chain: [false, true],
}

/** A value in pixels; what is beyond the end of a logarithmic axis is not drawn. */
function placed(across: number, figure: number | undefined, y: Axis, box: Plot['box']): Point | undefined {
  const at = figure === undefined ? undefined : point(across, y.place(figure))
  return at && at.y <= box.bottom + 0.01 ? at : undefined
}

const diamond = ({ x, y }: Point, half: number): readonly Point[] => [
  point(x, y - half),
  point(x + half, y),
  point(x, y + half),
  point(x - half, y),
]
