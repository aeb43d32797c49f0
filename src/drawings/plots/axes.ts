import { scaleLinear, scaleLog } from 'd3-scale'
import { allMarks } from '../../units/index.ts'
import type { Canvas, TextPlacement } from '../canvas/canvas.ts'
import { type Box, point, type Segment } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { figureText } from '../canvas/text-figures.ts'

/** A place on an axis; without a text it is a mark between. */
export interface Tick {
  readonly value: number
  readonly text?: string
}

/** One axis of a plot: from values to px. */
export interface Axis {
  readonly from: number
  readonly to: number
  /** What it shows, with its unit: `Blur, px`. */
  readonly heading: string
  readonly ticks: readonly Tick[]
  place(value: number): number
  /** The value at a share of its length. */
  at(share: number): number
}

/** Where an axis begins and ends, in px. */
export type Span = readonly [number, number]

type Ends = readonly [from: number, to: number]

/** Ends that can carry a scale: in order, apart, and no farther than figures reach. */
function usable([from, to]: Ends, least: number): Ends {
  const clamp = (value: number) => Math.min(1e12, Math.max(least, Number.isFinite(value) ? value : least))
  const [low, high] = [clamp(Math.min(from, to)), clamp(Math.max(from, to))]
  if (high - low > 1e-9 * Math.max(Math.abs(low), Math.abs(high))) return [low, high]
  // All of one value still stands in the middle of something.
  const half = Math.abs(low) > 0 ? Math.abs(low) / 2 : 0.5
  return [low - half, high + half]
}

/** How far apart ticks should stand at least, in px. */
const APART = 44

/** Equal steps; the ends are moved out to whole ones. */
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

/** Equal factors, 1, 2 and 5 marked; nothing at or below zero has a place. */
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

/** The widest and the smallest aperture with a mark. */
const MARKED: Ends = [0.5, 128]

/** f-numbers a stop apart at equal distances, third-stop marks, the full stops named. */
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

/** The third-stop marks from one aperture to another, a mark typed as such counted in. */
export const apertureMarks = (widest: number, smallest: number) =>
  allMarks('aperture').filter(({ exact }) => exact > widest * 0.96 && exact < smallest * 1.04)

const isFullStop = (exact: number): boolean => Math.abs(2 * Math.log2(exact) - Math.round(2 * Math.log2(exact))) < 1e-6

/** A plot's frame. */
export interface Plot {
  readonly box: Box
  readonly x: Axis
  readonly y: Axis
}

const TICK = 5
const MINOR = 3
/** Below a plot, for the figures of its axis and the heading. */
export const BELOW = 42
/** Above it, for the heading of the upright axis. */
export const ABOVE = 22

/** The room the figures of an upright axis take. */
export const figuresWidth = (axis: Axis): number =>
  Math.max(0, ...axis.ticks.map(({ text = '' }) => textWidth(text))) + TICK + 5

/**
 * Lines, ticks, figures and headings of both axes. Figures that would touch are left out evenly. The upright axis' heading
 * stands `rise` px higher where words come between.
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

const tickText = (text: string, x: number, y: number, anchor: 'start' | 'middle' | 'end'): TextPlacement => ({
  lettering: { text, at: point(x, y), anchor },
})

const onScale = ({ ticks, from, to }: Axis): readonly Tick[] =>
  ticks.filter(({ value }) => value >= from * (1 - 1e-9) - 1e-12 && value <= to * (1 + 1e-9) + 1e-12)

/** Those with a text, every one, every second or every so many, that stand far enough apart. */
function evenly(ticks: readonly Tick[], axis: Axis, apart: number): readonly Tick[] {
  const named = ticks.filter(({ text }) => text !== undefined)
  for (let every = 1; every <= named.length; every++) {
    const kept = named.filter((_, at) => at % every === 0)
    const places = kept.map(({ value }) => axis.place(value))
    if (places.every((at, which) => which === 0 || Math.abs(at - (places[which - 1] as number)) >= apart)) return kept
  }
  return named.slice(0, 1)
}

/** Between the words over a plot, line by line. */
export const MARK_ROW = 18

/**
 * Marks a value across a plot: a line with its words over it, on the lowest of `rows` that is free; the value set now
 * has a triangle on the axis too.
 */
export function markAcross(
  canvas: Canvas,
  { box, x }: Plot,
  mark: {
    readonly className: string
    readonly value: number
    readonly stroke: 'thin' | 'dashed'
    /** The fullest wording first. */
    readonly wordings: readonly string[]
    readonly present?: boolean
    readonly rows: number
    /** To which side its words give way, where another mark is near: −1 to the left. */
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

/** A line of values over the axis, broken where it leaves the plot. */
export function plotted({ box, x, y }: Plot, values: (at: number) => number, samples = 96) {
  const runs: { x: number; y: number }[][] = []
  let run: { x: number; y: number }[] = []
  const [left, right] = [x.place(x.from), x.place(x.to)]
  for (let step = 0; step <= samples; step++) {
    // Even steps in px keep the curve as smooth at one end as at the other.
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
