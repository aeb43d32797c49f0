import { STOP, showFigure, showQuantity } from '../../units/index.ts'
import { Canvas } from '../canvas/canvas.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { type Box, corners, point } from '../canvas/geometry.ts'
import { arrowhead } from '../canvas/lamp-outline.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { rowsOfText } from '../plots/fitted-text.ts'
import { numberIn, numbersIn, textsIn } from '../plots/given-values.ts'
import { letterRow, NAME_ROW, rowColumns } from '../plots/row-columns.ts'
import { roundTicks } from '../plots/ticks.ts'

const NARROWEST = 240
const PAD = 4
const HEAD = 46
const ROW = 30
const MOST_ENTRIES = 40
/** Beyond this a figure is a slip of the hand. */
const MOST_STOPS = 200

/** A row of the ledger: its name, and the light value before and after it. */
interface Entry {
  readonly name: string
  readonly stops: number
  readonly before: number
  readonly after: number
}

const stops = (value: number): string => showQuantity(Number(value.toPrecision(9)), STOP).figure
const signed = (value: number): string => (value > 0 ? `+${stops(value)}` : stops(value))
const ev = (value: number): string => `${stops(value)} EV`

/**
 * The ledger of stops as a level that is moved: a row an entry, to the right for more exposure, to the left for less,
 * from the light value metered to the one to set. Rows, not a stair: names stay legible on a phone, however many.
 */
export const drawLedger: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? 'Stops, from the reading to the setting'
  const given = numbersIn(inputs.stops)
  if (!given || given.length === 0) return nothingDrawn(width, title, [], 'no stops are known.')
  const omissions: string[] = []
  const names = textsIn(inputs.names)
  const stated = numberIn(inputs.start)
  const start = stated !== undefined && Math.abs(stated) <= MOST_STOPS ? stated : undefined
  if (start === undefined)
    omissions.push(
      inputs.start === undefined
        ? 'The light values are not given: the metered one is not known. Stops are counted from it.'
        : 'The light values are not given: what is metered is no light value.',
    )
  if (inputs.names !== undefined && !names) omissions.push('The entries are not named: their names are no texts.')

  const entries: Entry[] = []
  let level = start ?? 0
  given.forEach((shift, at) => {
    const name = names?.[at]?.trim() || `entry ${at + 1}`
    if (!Number.isFinite(shift) || Math.abs(shift) > MOST_STOPS)
      omissions.push(`«${name}» is left out: it is no number of stops.`)
    else if (entries.length === MOST_ENTRIES)
      omissions.push(`«${name}» is left out: only ${MOST_ENTRIES} entries are drawn.`)
    else {
      entries.push({ name, stops: shift, before: level, after: level - shift })
      level -= shift
    }
  })
  if (entries.length === 0) return nothingDrawn(width, title, omissions, 'no stops are known.')

  const total = (start ?? 0) - level
  // Without a light value the levels are stops from the reading: more of them is more exposure.
  const shownAt = (value: number): number => (start === undefined ? -value : value)
  const startFigure = start === undefined ? '0' : ev(start)
  const endFigure = start === undefined ? signed(total) : ev(level)
  const figures = [startFigure, endFigure, ...entries.map((entry) => signed(entry.stops))]
  const columns = rowColumns(['metered', 'set', ...entries.map(({ name }) => name)], figures, width)
  const rows = entries.map(({ name }) => rowsOfText(name, columns.nameWidth, 2))
  const middles: number[] = []
  let y = HEAD
  for (const row of [['metered'], ...rows, ['set']]) {
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
  letterRow(canvas, 'start', columns, first, ['metered'], startFigure, whole)
  for (const [at, entry] of entries.entries()) {
    const name = rows[at] as readonly string[]
    letterRow(canvas, `entry-${at + 1}`, columns, middles[at + 1] as number, name, signed(entry.stops), whole)
  }
  letterRow(canvas, 'end', columns, last, ['set'], endFigure, whole)

  function drawAxis(): void {
    const room = columns.plotRight - columns.plotLeft
    const axis = HEAD - 4
    // Past a light value of 10 the labels are two signs wide, and below zero three.
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
    const unit = start === undefined ? 'stops' : 'EV'
    canvas.placeText(
      'axis-unit',
      [{ lettering: { text: unit, at: point(columns.nameLeft, axis - 5), anchor: 'start' } }],
      whole,
    )
    const text = 'more exposure'
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
      // Nothing added and nothing taken: a stroke on the level.
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
  const each = entries.map(
    (entry) => `${entry.name} ${signed(entry.stops)}${start === undefined ? '' : ` to ${ev(entry.after)}`}`,
  )
  const sum =
    total === 0
      ? 'Nothing is added or taken in all'
      : `${stops(Math.abs(total))} stops ${total > 0 ? 'more' : 'less'} exposure in all`
  return [
    start === undefined ? 'Stops added to the reading and taken from it.' : `The reading is ${ev(start)}.`,
    `In turn, more exposure counted as plus: ${each.join('; ')}.`,
    start === undefined ? `${sum}.` : `${sum}; ${ev(end)} is to be set.`,
  ].join(' ')
}
