import { STOP, showFigure, showQuantity } from '../../units/index.ts'
import { Canvas } from '../canvas/canvas.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { type Box, corners, point } from '../canvas/geometry.ts'
import { arrowhead } from '../canvas/lamp-outline.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { TITLES } from '../canvas/words.ts'
import { rowsOfText } from '../plots/fitted-text.ts'
import { numberIn, numbersIn, textsIn } from '../plots/given-values.ts'
import { letterRow, NAME_ROW, rowColumns } from '../plots/row-columns.ts'
import { roundTicks } from '../plots/ticks.ts'
import { LEDGER_WORDS as WORDS } from './words.ts'

const NARROWEST = 240
const PAD = 4
const HEAD = 46
const ROW = 30
const MOST_ENTRIES = 40
/** Larger numbers of stops are typing errors. */
const MOST_STOPS = 200

/** A row of the ledger, with the light value before and after it in EV. */
interface Entry {
  readonly name: string
  readonly stops: number
  readonly before: number
  readonly after: number
}

const stops = (value: number): string => showQuantity(Number(value.toPrecision(9)), STOP).figure
const signed = (value: number): string => (value > 0 ? `+${stops(value)}` : stops(value))
const ev = (value: number): string => WORDS.ev(stops(value))

/**
 * Draws the ledger of stops, one row per entry: a step to the right for more exposure, to the left for less, from the
 * metered light value to the one to set. Rows keep long names legible on a phone.
 */
export const drawLedger: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.ledger
  const given = numbersIn(inputs.stops)
  if (!given || given.length === 0) return nothingDrawn(width, title, [], WORDS.noStops)
  const omissions: string[] = []
  const names = textsIn(inputs.names)
  const stated = numberIn(inputs.start)
  const start = stated !== undefined && Math.abs(stated) <= MOST_STOPS ? stated : undefined
  if (start === undefined) omissions.push(inputs.start === undefined ? WORDS.startUnknown : WORDS.startUnusable)
  if (inputs.names !== undefined && !names) omissions.push(WORDS.namesUnusable)

  const entries: Entry[] = []
  let level = start ?? 0
  given.forEach((shift, at) => {
    const name = names?.[at]?.trim() || WORDS.entry(at + 1)
    if (!Number.isFinite(shift) || Math.abs(shift) > MOST_STOPS) omissions.push(WORDS.notStops(name))
    else if (entries.length === MOST_ENTRIES) omissions.push(WORDS.tooMany(name, MOST_ENTRIES))
    else {
      entries.push({ name, stops: shift, before: level, after: level - shift })
      level -= shift
    }
  })
  if (entries.length === 0) return nothingDrawn(width, title, omissions, WORDS.noStops)

  const total = (start ?? 0) - level
  // Without a light value the levels are stops relative to the reading; more exposure counts as plus.
  const shownAt = (value: number): number => (start === undefined ? -value : value)
  const startFigure = start === undefined ? '0' : ev(start)
  const endFigure = start === undefined ? signed(total) : ev(level)
  const figures = [startFigure, endFigure, ...entries.map((entry) => signed(entry.stops))]
  const columns = rowColumns([WORDS.metered, WORDS.set, ...entries.map(({ name }) => name)], figures, width)
  const rows = entries.map(({ name }) => rowsOfText(name, columns.nameWidth, 2))
  const middles: number[] = []
  let y = HEAD
  for (const row of [[WORDS.metered], ...rows, [WORDS.set]]) {
    const high = ROW + (row.length - 1) * (NAME_ROW - 4)
    middles.push(y + high / 2)
    y += high
  }
  const bottom = y
  const height = bottom + PAD

  const levels = [start ?? 0, ...entries.map(({ after }) => after)]
  const [least, greatest] = [Math.min(...levels), Math.max(...levels)]
  const spare = Math.max((greatest - least) * 0.04, greatest === least ? 1 : 0)
  const [low, high] = [least - spare, greatest + spare]
  const x = (value: number): number =>
    columns.plotLeft + 6 + ((high - value) / (high - low)) * (columns.plotRight - columns.plotLeft - 12)

  const canvas = new Canvas(width)
  const whole: Box = { left: 0, right: width, top: 0, bottom: height }
  drawAxis()
  const first = middles[0] as number
  const last = middles.at(-1) as number
  drawEnd('start', x(levels[0] as number), first)
  for (const [at, entry] of entries.entries()) drawEntry(entry, middles[at] as number, middles[at + 1] as number)
  drawEnd('end', x(level), last)
  canvas.line('dotted', 'level', point(x(level), middles.at(-2) as number), point(x(level), last - 5))
  letterRow(canvas, 'start', columns, first, [WORDS.metered], startFigure, whole)
  for (const [at, entry] of entries.entries()) {
    const name = rows[at] as readonly string[]
    letterRow(canvas, `entry-${at + 1}`, columns, middles[at + 1] as number, name, signed(entry.stops), whole)
  }
  letterRow(canvas, 'end', columns, last, [WORDS.set], endFigure, whole)

  function drawAxis(): void {
    const room = columns.plotRight - columns.plotLeft
    const axis = HEAD - 4
    // Labels are up to three characters wide: two digits from 10 EV on, and a sign below zero.
    const ticks = roundTicks(
      Math.min(shownAt(low), shownAt(high)),
      Math.max(shownAt(low), shownAt(high)),
      room / 34,
      0.1,
    )
    for (const tick of ticks) {
      const across = x(shownAt(tick))
      canvas.lines('hatch', 'grid', [{ from: point(across, axis), to: point(across, bottom - 4) }])
      const lettering = { text: showFigure(tick), at: point(across, axis - 5), anchor: 'middle' as const }
      canvas.placeText('tick', [{ lettering }], {
        left: columns.plotLeft - 8,
        right: columns.plotRight + 8,
        top: 0,
        bottom: axis,
      })
    }
    const unit = start === undefined ? WORDS.stopsUnit : WORDS.evUnit
    canvas.placeText(
      'axis-unit',
      [{ lettering: { text: unit, at: point(columns.nameLeft, axis - 5), anchor: 'start' } }],
      whole,
    )
    const text = WORDS.moreExposure
    const from = columns.plotRight
    const tip = point(from, PAD + ASCENT / 2 + 2)
    const tail = point(from - 22, tip.y)
    const words = { text, at: point(tail.x - 6, PAD + ASCENT), anchor: 'end' as const }
    if (words.at.x - textWidth(text) < PAD) return
    canvas.lines('thin', 'direction', [{ from: tail, to: tip }, ...arrowhead(tail, tip)])
    canvas.placeText('direction', [{ lettering: words }], whole)
  }

  function drawEnd(className: string, across: number, middle: number): void {
    const box = { left: across - 5, right: across + 5, top: middle - 5, bottom: middle + 5 }
    canvas.body('thick', className, corners(box), { filled: className === 'end' })
  }

  function drawEntry(entry: Entry, above: number, middle: number): void {
    const [from, to] = [point(x(entry.before), middle), point(x(entry.after), middle)]
    canvas.line('dotted', 'level', point(from.x, above === first ? above + 5 : above), from)
    if (Math.abs(to.x - from.x) < 1) {
      // An entry of zero is a short stroke on the level.
      canvas.line('thick', 'step', point(from.x - 4, middle), point(from.x + 4, middle))
      return
    }
    canvas.line('thick', 'step', from, to)
    canvas.lines('thick', 'step-arrow', arrowhead(from, to))
  }

  const description = describe(entries, start, level, total)
  return { node: canvas.node(height, title, description), title, description, omissions, width, height }
}

function describe(entries: readonly Entry[], start: number | undefined, end: number, total: number): string {
  const each = entries.map((entry) =>
    start === undefined
      ? WORDS.step(entry.name, signed(entry.stops))
      : WORDS.stepTo(entry.name, signed(entry.stops), ev(entry.after)),
  )
  const sum = total === 0 ? WORDS.unchanged : WORDS.total(stops(Math.abs(total)), total > 0)
  return [
    start === undefined ? WORDS.introduction : WORDS.reading(ev(start)),
    WORDS.entries(each.join('; ')),
    start === undefined ? WORDS.result(sum) : WORDS.resultToSet(sum, ev(end)),
  ].join(' ')
}
