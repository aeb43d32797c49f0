import { allMarks, type Mark, nearestMark, readDisplayUnit, showQuantity, TIME } from '../../units/index.ts'
import { signedStops } from '../../units/stops.ts'
import { Canvas, type TextPlacement } from '../canvas/canvas.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { type Box, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import type { Pixels } from '../canvas/measures.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { TITLES } from '../canvas/words.ts'
import { TIME_WORDS as WORDS } from './words.ts'

const PAD = 4
const NARROWEST = 240
const ROW = 18
const TICK = 6
/** The least distance between marks in pixels, and the most marks shown on each side of the exact time. */
const APART = 34
const MOST_EACH_SIDE = 6
/** Longer times are typing errors. */
const LONGEST_SECONDS = 1e6

const SECONDS = readDisplayUnit('1/ s')

/** `1/4.70 s`, `2 s`. */
const timeText = (seconds: number): string => showQuantity(seconds, TIME, { unit: SECONDS }).text

/** The label of a mark without its unit: `1/5`, `0.4`. */
const markText = ({ text }: Mark): string => text.replace(/ s$/, '')

/** Draws an exposure time on the scale of third-stop marks, as the dial of a camera shows them. */
export const drawTime: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.time
  const omissions: string[] = []
  const read = numberReader(omissions)
  const exact = read.positive(inputs.time, WORDS.time, LONGEST_SECONDS)
  const set = read.positive(inputs.set_time, WORDS.setTime, LONGEST_SECONDS)
  if (exact === undefined) return nothingDrawn(width, title, omissions, WORDS.timeUnknown)
  const nearest = nearestMark('time', exact)
  const marks = nearest ? marksAround(nearest, width) : []
  if (!nearest) omissions.push(WORDS.outsideMarks)

  const stopsFromExact = (seconds: number): number => Math.log2(seconds / exact)
  const first = marks[0]?.exact ?? exact
  const last = marks.at(-1)?.exact ?? exact
  const [left, right] = [PAD + 24, width - PAD - 24]
  const x = (seconds: number): Pixels =>
    first === last ? (left + right) / 2 : left + ((right - left) * Math.log2(seconds / first)) / Math.log2(last / first)

  const canvas = new Canvas(width)
  const axis = PAD + 2 * ROW + 18
  const height = axis + TICK + 3 + ASCENT + 6 + (set === undefined ? 0 : ROW + 8) + PAD
  const whole: Box = { left: 0, right: width, top: 0, bottom: height }
  canvas.placeText(
    'head',
    [{ lettering: { text: WORDS.head, at: point(PAD, PAD + ASCENT + 1), anchor: 'start' } }],
    whole,
  )
  canvas.line('thin', 'axis', point(left, axis), point(right, axis))
  canvas.lines(
    'thin',
    'mark',
    marks.map((mark) => ({ from: point(x(mark.exact), axis), to: point(x(mark.exact), axis + TICK) })),
  )
  drawPointer(canvas, x(exact), axis, timeText(exact), whole)
  if (set !== undefined) drawSet(set)
  for (const mark of marks) {
    const at = point(x(mark.exact), axis + TICK + 3 + ASCENT)
    const lettering = { text: markText(mark), at, anchor: 'middle' as const, bold: mark.exact === nearest?.exact }
    canvas.placeText('mark-text', [{ lettering }], whole)
  }

  /** Marks the time that is set, below the scale. */
  function drawSet(seconds: number): void {
    const at = Math.min(right, Math.max(left, x(seconds)))
    const tip = axis + TICK + 3 + ASCENT + 8
    canvas.body('thin', 'set', [point(at, tip), point(at - 5, tip + 8), point(at + 5, tip + 8)])
    const mark = nearestMark('time', seconds)?.text ?? timeText(seconds)
    const wordings = WORDS.setTo(mark, signedStops(stopsFromExact(seconds)))
    canvas.placeText('set', besidePointer(at, tip + 8, wordings), whole)
  }

  const description = [
    nearest
      ? WORDS.description(timeText(exact), nearest.text, signedStops(stopsFromExact(nearest.exact)))
      : WORDS.exact(timeText(exact)),
    ...(set === undefined ? [] : [WORDS.set(timeText(set), signedStops(stopsFromExact(set)))]),
    ...(marks.length === 0 ? [] : [WORDS.marks(marks.map(markText).join(', '))]),
  ].join(' ')
  return { node: canvas.node(height, title, description), title, description, omissions, width, height }
}

/** The marks around the nearest one, shortest time first, as many as fit a width in pixels. */
function marksAround(nearest: Mark, width: Pixels): readonly Mark[] {
  const all = [...allMarks('time')].sort((a, b) => a.exact - b.exact)
  const at = all.findIndex(({ exact }) => exact === nearest.exact)
  const widest = Math.max(...all.map((mark) => textWidth(markText(mark)))) + 10
  const each = Math.min(MOST_EACH_SIDE, Math.max(1, Math.floor((width - 60) / Math.max(APART, widest) / 2)))
  return all.slice(Math.max(0, at - each), at + each + 1)
}

/** A triangle above the scale at the exact time, with its figure. */
function drawPointer(canvas: Canvas, x: Pixels, axis: Pixels, text: string, within: Box): void {
  canvas.body('thin', 'pointer', [point(x, axis - 2), point(x - 5, axis - 11), point(x + 5, axis - 11)], {
    filled: true,
  })
  const places = [0, -20, 20, -40, 40].map((aside) => ({
    lettering: { text, at: point(x + aside, axis - 16), anchor: 'middle' as const, bold: true },
  }))
  canvas.placeText('exact', places, within)
}

function* besidePointer(x: Pixels, bottom: Pixels, wordings: readonly string[]): Generator<TextPlacement> {
  for (const text of wordings) {
    yield { lettering: { text, at: point(x + 9, bottom), anchor: 'start' } }
    yield { lettering: { text, at: point(x - 9, bottom), anchor: 'end' } }
  }
}
