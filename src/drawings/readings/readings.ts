import { stopsText } from '../../units/stops.ts'
import { Canvas, type TextPlacement } from '../canvas/canvas.ts'
import type { Draw, DrawingInputs } from '../canvas/drawing-options.ts'
import { type Box, corners, type Point, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import type { Pixels, Stops } from '../canvas/measures.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { numberReader, numbersOf } from '../canvas/number-inputs.ts'
import { apertureText, capital, figureText } from '../canvas/text-figures.ts'
import { TITLES } from '../canvas/words.ts'
import { FIVE, NINE, readingPointName } from '../evenness/reading-points.ts'
import { READINGS_WORDS as WORDS } from './words.ts'

const PAD = 4
const NARROWEST = 240
const ROW = 18
const FARTHEST = 100
/** Height of the original as drawn: at most this multiple of its width, and at least this many pixels for three rows. */
const TALLEST = 1.1
const LOWEST = 120
/** Distance of the outer reading points from the edges, as a fraction of each side, and at least this many pixels for their figures. */
const INSET = 0.14
const LEAST_INSET = { top: 14, bottom: 26 }
const MARK = 4

/** Readings as they were taken, with their brightness in stops relative to an arbitrary zero. */
interface Readings {
  readonly shown: readonly string[]
  readonly stops: readonly Stops[]
  readonly unit: string
}

const SOURCES: readonly (readonly [
  input: string,
  unit: string,
  stops: (reading: number) => Stops,
  show: (reading: number) => string,
])[] = [
  ['readings', WORDS.lux, Math.log2, figureText],
  ['readings_in_stops', WORDS.ev, (reading) => reading, figureText],
  ['readings_in_apertures', WORDS.apertures, (reading) => 2 * Math.log2(reading), apertureText],
]

function readReadings(inputs: DrawingInputs, omissions: string[]): Readings | undefined {
  const source = SOURCES.find(([input]) => inputs[input] !== undefined)
  if (!source) return undefined
  const [input, unit, inStops, show] = source
  const numbers = numbersOf(inputs[input])
  const stops = numbers?.map(inStops)
  if (!numbers || !stops?.every(Number.isFinite)) omissions.push(WORDS.notPositive)
  else if (stops.length !== 5 && stops.length !== 9) omissions.push(WORDS.notFiveOrNine(stops.length))
  else return { shown: numbers.map(show), stops, unit }
  return undefined
}

/** Draws the readings of a meter where each was taken on the original, with the brightest and the dimmest. */
export const drawReadings: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.readings
  const omissions: string[] = []
  const read = numberReader(omissions)
  const originalWidth = read.positive(inputs.original_width, WORDS.originalWidth, FARTHEST)
  const originalHeight = read.positive(inputs.original_height, WORDS.originalHeight, FARTHEST)
  const limit = read.positive(inputs.limit, WORDS.limit, FARTHEST)
  const readings = readReadings(inputs, omissions)
  if (!readings) return nothingDrawn(width, title, omissions, WORDS.readingsUnknown)
  if (originalWidth === undefined || originalHeight === undefined) omissions.push(WORDS.sizeAssumed)
  const ratio = originalWidth === undefined || originalHeight === undefined ? 3 / 4 : originalHeight / originalWidth

  const points = readings.stops.length === 5 ? FIVE : NINE
  const brightest = readings.stops.indexOf(Math.max(...readings.stops))
  const dimmest = readings.stops.indexOf(Math.min(...readings.stops))
  const spread = (readings.stops[brightest] as Stops) - (readings.stops[dimmest] as Stops)
  const figure = (at: number): string => readings.shown[at] as string

  const labels = [...WORDS.brightest(figure(brightest)), ...WORDS.dimmest(figure(dimmest))]
  const side = Math.max(...labels.map(textWidth)) + 14
  const head =
    limit === undefined ? WORDS.spread(stopsText(spread)) : WORDS.spreadOf(stopsText(spread), stopsText(limit))
  const figures = 3 * (Math.max(...readings.shown.map(textWidth)) * 1.12 + 14)
  const box = placeOf(ratio, width - 2 * PAD, side, figures)
  // A wide original leaves no space at its side: the labels then go below it.
  const beside = width - PAD - box.right >= side
  const height = box.bottom + (beside ? 0 : 2 * ROW) + PAD + 2
  const whole: Box = { left: 0, right: width, top: 0, bottom: height }
  const on = ({ x, y }: Point): Point => {
    const inset = (side: Pixels, least: Pixels): Pixels => Math.max(INSET * side, least)
    const [across, down] = [box.right - box.left, box.bottom - box.top]
    const top = box.top + inset(down, LEAST_INSET.top)
    const bottom = box.bottom - inset(down, LEAST_INSET.bottom)
    return point(box.left + across * (INSET + x * (1 - 2 * INSET)), bottom - y * (bottom - top))
  }

  const canvas = new Canvas(width)
  canvas.placeText('head', [{ lettering: { text: head, at: point(PAD, PAD + ASCENT + 1), anchor: 'start' } }], whole)
  canvas.outline('thick', 'original', corners(box))
  points.forEach((at, which) => {
    const { x, y } = on(at)
    canvas.lines('thin', `reading-point reading-${which + 1}`, [
      { from: point(x - MARK, y - 6), to: point(x + MARK, y - 6) },
      { from: point(x, y - 6 - MARK), to: point(x, y - 6 + MARK) },
    ])
  })
  points.forEach((at, which) => {
    const bold = which === brightest || which === dimmest
    canvas.placeText('reading', readingPlaces(on(at), figure(which), bold, box), whole)
  })
  letterExtreme('brightest', WORDS.brightest(figure(brightest)), on(points[brightest] as Point), 0)
  if (spread > 0) letterExtreme('dimmest', WORDS.dimmest(figure(dimmest)), on(points[dimmest] as Point), 1)

  function letterExtreme(className: string, wordings: readonly string[], near: Point, row: number): void {
    const places = wordings.flatMap((text): readonly TextPlacement[] =>
      beside
        ? [0, ROW, -ROW, 2 * ROW, -2 * ROW].map((aside) => ({
            lettering: { text, at: point(box.right + 10, near.y + ASCENT + aside), anchor: 'start' as const },
          }))
        : [{ lettering: { text, at: point(PAD, box.bottom + ASCENT + 5 + row * ROW), anchor: 'start' } }],
    )
    canvas.placeText(className, places, whole)
  }

  const description = [
    WORDS.introduction(points.length, readings.unit),
    WORDS.list(points.map((at, which) => WORDS.at(readingPointName(at), figure(which))).join(', ')),
    WORDS.extremes(figure(brightest), figure(dimmest), stopsText(spread)),
  ].join(' ')
  return {
    node: canvas.node(height, title, description),
    title,
    description: capital(description),
    omissions,
    width,
    height,
  }
}

/** Places the original to scale, leaving space for labels on the right unless the figures need the whole width. */
function placeOf(ratio: number, space: Pixels, side: Pixels, figures: Pixels): Box {
  const top = PAD + ROW + 6
  const bounded = Math.min(4, Math.max(0.25, ratio))
  const across = bounded < 0.45 || space - side < figures ? space : space - side
  const width = Math.min(across, Math.max((across * TALLEST) / bounded, LOWEST, figures))
  return { left: PAD, right: PAD + width, top, bottom: top + Math.max(LOWEST, width * bounded) }
}

/** Places for a figure: below its cross, then shifted inwards. */
function* readingPlaces(at: Point, text: string, bold: boolean, box: Box): Generator<TextPlacement> {
  const half = (textWidth(text) * 1.12) / 2
  const x = Math.min(box.right - half - 4, Math.max(box.left + half + 4, at.x))
  for (const down of [0, 3, 6, -22])
    yield { lettering: { text, at: point(x, at.y + ASCENT + 2 + down), anchor: 'middle', bold } }
}
