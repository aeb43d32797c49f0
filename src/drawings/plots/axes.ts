import { scaleLinear, scaleLog } from 'd3-scale'
import { allMarks } from '../../units/index.ts'
import type { Canvas, TextPlacement } from '../canvas/canvas.ts'
import { type Box, point, type Segment } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { figureText } from '../canvas/text-figures.ts'

/** A tick on an axis; a tick without text is a minor one. */
export interface Tick {
  readonly value: number
  readonly text?: string
}

/** An axis of a plot, mapping values to pixels. */
export interface Axis {
  readonly from: number
  readonly to: number
  /** The quantity with its unit: `Blur, px`. */
  readonly heading: string
  readonly ticks: readonly Tick[]
  place(value: number): number
  /** The value at a fraction of the length of the axis. */
  at(share: number): number
}

/** The start and end of an axis in pixels. */
export type Span = readonly [number, number]

type Ends = readonly [from: number, to: number]

/** The least distance between the ends of a scale: closer ones have no ticks that a number could hold. */
const DISTINCT = 1e-15

/** Ends usable for a scale: in order, distinct, and within the range that figures can show. */
function usable([from, to]: Ends, least: number): Ends {
  const clamp = (value: number) => Math.min(1e12, Math.max(least, Number.isFinite(value) ? value : least))
  const [low, high] = [clamp(Math.min(from, to)), clamp(Math.max(from, to))]
  if (high - low > Math.max(DISTINCT, 1e-9 * Math.max(Math.abs(low), Math.abs(high)))) return [low, high]
  // A single value is placed in the middle of an axis.
  const half = Math.abs(low) > DISTINCT ? Math.abs(low) / 2 : 0.5
  return [low - half, high + half]
}

/** The least distance between ticks in pixels. */
const APART = 44

/** A linear axis; its ends are extended to whole steps. */
export function linearAxis(ends: Ends, span: Span, heading: string): Axis {
  const count = Math.max(2, Math.floor(Math.abs(span[1] - span[0]) / APART))
  const scale = scaleLinear().domain(usable(ends, -1e12)).nice(count).range(span)
  const [from, to] = scale.domain() as [number, number]
  return {
    from,
    to,
    heading,
    ticks: scale.ticks(count).map(texted),
    place: (value) => scale(value),
    at: (share) => from + (to - from) * share,
  }
}

const texted = (value: number): Tick => ({ value, text: figureText(value) })

/** A logarithmic axis with 1, 2 and 5 marked; values must be above zero. */
export function logAxis(ends: Ends, span: Span, heading: string): Axis {
  const [low, high] = usable(ends, 1e-12)
  const scale = scaleLog()
    .domain([Math.max(low, high * 1e-6), high])
    .range(span)
  const [from, to] = scale.domain() as [number, number]
  const decades = Math.log10(to / from)
  const leading = decades > 3 ? [1] : [1, 2, 5]
  const ticks: Tick[] = []
  for (let decade = Math.floor(Math.log10(from)); decade <= Math.ceil(Math.log10(to)); decade++)
    for (let digit = 1; digit <= 9; digit++) {
      const value = Number(`${digit}e${decade}`)
      if (value < from * (1 - 1e-9) || value > to * (1 + 1e-9)) continue
      ticks.push(leading.includes(digit) ? texted(value) : { value })
    }
  return { from, to, heading, ticks, place: (value) => scale(value), at: (share) => from * (to / from) ** share }
}

/** The widest and the smallest marked f-number. */
const MARKED: Ends = [0.5, 128]

/** An axis of f-numbers, equal distances for equal stops, with third-stop marks and full stops labelled. */
export function apertureAxis(ends: Ends, span: Span, heading: string): Axis {
  const clamp = (aperture: number) => Math.min(MARKED[1], Math.max(MARKED[0], aperture))
  const [low, high] = usable([clamp(ends[0]), clamp(ends[1])], MARKED[0])
  const scale = scaleLog().base(2).domain([low, high]).range(span)
  return {
    from: low,
    to: high,
    heading,
    ticks: apertureMarks(low, high).map(({ nominal, exact }) =>
      isFullStop(exact) ? { value: exact, text: String(nominal) } : { value: exact },
    ),
    place: (value) => scale(value),
    at: (share) => low * (high / low) ** share,
  }
}

/** The third-stop marks between two f-numbers, including marks given by their nominal value. */
export const apertureMarks = (widest: number, smallest: number) =>
  allMarks('aperture').filter(({ exact }) => exact > widest * 0.96 && exact < smallest * 1.04)

const isFullStop = (exact: number): boolean => Math.abs(2 * Math.log2(exact) - Math.round(2 * Math.log2(exact))) < 1e-6

/** The area of a plot with its axes. */
export interface Plot {
  readonly box: Box
  readonly x: Axis
  readonly y: Axis
}

const TICK = 5
const MINOR = 3
/** Space in pixels below a plot for the figures and the heading of the horizontal axis. */
export const BELOW = 42
/** Space in pixels above a plot for the heading of the vertical axis. */
export const ABOVE = 22

/** The width in pixels of the figures of a vertical axis. */
export const figuresWidth = (axis: Axis): number =>
  Math.max(0, ...axis.ticks.map(({ text = '' }) => textWidth(text))) + TICK + 5

/**
 * Draws both axes with ticks, figures and headings. If figures would touch, only every second, third … is shown. The heading
 * of the vertical axis is `rise` pixels higher, to leave space for texts above the plot.
 */
export function drawAxes(canvas: Canvas, { box, x, y }: Plot, paper: Box, rise = 0): void {
  canvas.lines('thin', 'axis', [
    { from: point(box.left, box.bottom), to: point(box.right, box.bottom) },
    { from: point(box.left, box.top), to: point(box.left, box.bottom) },
  ])
  const xTicks = onScale(x)
  const yTicks = onScale(y)
  canvas.lines('dimension', 'tick', [
    ...xTicks.map((tick): Segment => {
      const at = x.place(tick.value)
      return { from: point(at, box.bottom), to: point(at, box.bottom + (tick.text ? TICK : MINOR)) }
    }),
    ...yTicks.map((tick): Segment => {
      const at = y.place(tick.value)
      return { from: point(box.left, at), to: point(box.left - (tick.text ? TICK : MINOR), at) }
    }),
  ])
  const widest = Math.max(0, ...xTicks.map(({ text = '' }) => textWidth(text)))
  for (const tick of evenly(xTicks, x, widest + 6))
    canvas.placeText(
      'tick-text',
      [tickText(tick.text ?? '', x.place(tick.value), box.bottom + TICK + 3 + ASCENT, 'middle')],
      paper,
    )
  for (const tick of evenly(yTicks, y, 16))
    canvas.placeText(
      'tick-text',
      [tickText(tick.text ?? '', box.left - TICK - 3, y.place(tick.value) + ASCENT / 2 - 1, 'end')],
      paper,
    )
  if (x.heading) canvas.placeText('heading', [tickText(x.heading, box.right, box.bottom + BELOW - 6, 'end')], paper)
  canvas.placeText('heading', [tickText(y.heading, paper.left + 4, box.top - 11 - rise, 'start')], paper)
}

/** Draws a further vertical axis at a place to the right of a plot, with its ticks, figures and heading on the right. */
export function drawFurtherAxis(canvas: Canvas, { box, y }: Plot, at: number, paper: Box, rise = 0): void {
  canvas.line('thin', 'axis', point(at, box.top), point(at, box.bottom))
  const ticks = onScale(y)
  canvas.lines(
    'dimension',
    'tick',
    ticks.map((tick): Segment => {
      const up = y.place(tick.value)
      return { from: point(at, up), to: point(at + (tick.text ? TICK : MINOR), up) }
    }),
  )
  for (const tick of evenly(ticks, y, 16))
    canvas.placeText(
      'tick-text',
      [tickText(tick.text ?? '', at + TICK + 3, y.place(tick.value) + ASCENT / 2 - 1, 'start')],
      paper,
    )
  if (y.heading) canvas.placeText('heading', [tickText(y.heading, at + TICK + 3, box.top - 11 - rise, 'start')], paper)
}

const tickText = (text: string, x: number, y: number, anchor: 'start' | 'middle' | 'end'): TextPlacement => ({
  lettering: { text, at: point(x, y), anchor },
})

const onScale = ({ ticks, from, to }: Axis): readonly Tick[] =>
  ticks.filter(({ value }) => value >= from * (1 - 1e-9) - 1e-12 && value <= to * (1 + 1e-9) + 1e-12)

/** The labelled ticks, thinned evenly until they are at least `apart` pixels from each other. */
function evenly(ticks: readonly Tick[], axis: Axis, apart: number): readonly Tick[] {
  const named = ticks.filter(({ text }) => text !== undefined)
  for (let every = 1; every <= named.length; every++) {
    const shown = named.filter((_, at) => at % every === 0)
    const places = shown.map(({ value }) => axis.place(value))
    if (places.every((at, which) => which === 0 || Math.abs(at - (places[which - 1] as number)) >= apart)) return shown
  }
  return named.slice(0, 1)
}

/** Height in pixels of a row of texts above a plot. */
export const MARK_ROW = 18

/**
 * Marks a value with a line across the plot and a text above it, in the lowest free row. The value set at
 * present also has a triangle on the axis.
 */
export function markAcross(
  canvas: Canvas,
  { box, x }: Plot,
  mark: {
    readonly className: string
    readonly value: number
    readonly stroke: 'thin' | 'dashed'
    /** The texts to try, longest first. */
    readonly wordings: readonly string[]
    readonly present?: boolean
    readonly rows: number
    /** The side to which the text moves if another mark is near: −1 for left, 1 for right. */
    readonly lean?: number
  },
): void {
  const at = x.place(mark.value)
  const strip = { left: 2, right: canvas.width - 2, top: box.top - 4 - mark.rows * MARK_ROW, bottom: box.top }
  canvas.placeText(mark.className, overLine(at, box.top, mark.wordings, mark.rows, mark.lean ?? 0), strip)
  canvas.line(mark.stroke, mark.className, point(at, box.top), point(at, box.bottom))
  if (!mark.present) return
  const triangle = [point(at, box.bottom), point(at - 4.5, box.bottom - 8), point(at + 4.5, box.bottom - 8)]
  canvas.body('thin', `${mark.className} present`, triangle, { filled: true })
}

function* overLine(
  x: number,
  top: number,
  wordings: readonly string[],
  rows: number,
  lean: number,
): Generator<TextPlacement> {
  for (const text of wordings)
    for (let row = 0; row < rows; row++)
      for (const share of lean === 0 ? [0.5, 0.2, 0.8] : lean < 0 ? [0.97, 0.8, 0.6, 0.03] : [0.03, 0.2, 0.4, 0.97]) {
        const y = top - 8 - row * MARK_ROW
        const lettering = { text, at: point(x + (0.5 - share) * textWidth(text), y), anchor: 'middle' as const }
        yield { lettering, lines: [{ from: point(x, y + 4.5), to: point(x, top) }] }
      }
}

/** The curve of a function over the horizontal axis, interrupted where it leaves the plot. */
export function plotted({ box, x, y }: Plot, values: (at: number) => number, samples = 96) {
  const runs: { x: number; y: number }[][] = []
  let run: { x: number; y: number }[] = []
  const [left, right] = [x.place(x.from), x.place(x.to)]
  for (let step = 0; step <= samples; step++) {
    // Equal steps in pixels make the curve equally smooth everywhere.
    const share = step / samples
    const here = point(left + (right - left) * share, y.place(values(x.at(share))))
    if (Number.isFinite(here.y) && here.y >= box.top - 0.01 && here.y <= box.bottom + 0.01) run.push(here)
    else {
      if (run.length > 1) runs.push(run)
      run = []
    }
  }
  if (run.length > 1) runs.push(run)
  return runs
}
