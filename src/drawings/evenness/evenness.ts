import { listText } from '../../units/plural.ts'
import { signedStops, stopsText } from '../../units/stops.ts'
import { Canvas, type Stroke, type TextPlacement } from '../canvas/canvas.ts'
import { type Dimension, drawDimension, figures, LANE, letterDimension } from '../canvas/dimension-line.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { lengthIn, lengthUnit } from '../canvas/drawing-unit.ts'
import { type Box, corners, grown, type Point, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { figureText, withoutUnit } from '../canvas/text-figures.ts'
import { CANVAS_WORDS as SHARED, TITLES } from '../canvas/words.ts'
import { type Curve, letterAtEnd, letterOnCurve } from '../plots/curve-labels.ts'
import { cutAround } from '../plots/cut.ts'
import { hatchBelow } from '../plots/hatch-below.ts'
import { isoline, isolineStep, levelsBetween } from '../plots/isolines.ts'
import { describeEvenness, type Reading, withinLimit } from './describe-evenness.ts'
import { type Field, fieldOf } from './evenness-field.ts'
import { readField } from './evenness-inputs.ts'
import { arrangedAs, FIVE, NINE } from './reading-points.ts'
import { EVENNESS_WORDS as WORDS } from './words.ts'

const PAD = 4
const ROW = 18
/** Space in pixels above the map for labels of lines that end there. */
const OVER = 18
const NARROWEST = 240
/** The largest height of the map, as a multiple of its width. */
const TALLEST = 1.25
/** A map lower than this, in pixels, has no space for three rows of figures; the description has them. */
const LOWEST = 56
/** Isolines are drawn at most this many stops below the greatest. */
const DEEPEST = 10

/** Draws the light over the original as a map with lines of equal light, in stops from the mean. */
export const drawEvenness: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.evenness
  const show = lengthIn(lengthUnit(options.unit))
  const read = readField(inputs, show)
  const { lamps, limit } = read
  if (read.width === undefined || read.height === undefined)
    return nothingDrawn(width, title, read.omissions, WORDS.sizeUnknown)
  if (lamps.length === 0) return nothingDrawn(width, title, read.omissions, WORDS.noUsableLamp)
  const field = fieldOf(lamps, read.width, read.height, options.quick === true)
  if (!field) return nothingDrawn(width, title, read.omissions, WORDS.noLight)

  const deepest = Math.max(field.least.stops, field.greatest.stops - DEEPEST)
  const step = isolineStep(field.greatest.stops - deepest)
  const readings = readingsOf(field, read.readings)
  const measuredSpread = read.readings && Math.max(...read.readings) - Math.min(...read.readings)

  const heads = [WORDS.isolines(step), spreadHead(field, limit, width)]
  const place = mapPlace(read.width, read.height, width, PAD + heads.length * ROW + OVER)
  const { box } = place
  const on = ({ x, y }: Point): Point =>
    point(box.left + x * (box.right - box.left), box.bottom - y * (box.bottom - box.top))

  const canvas = new Canvas(width)
  const paper = { left: 0, right: width, top: 0, bottom: place.bottom + 2 * ROW }
  for (const [at, text] of heads.entries())
    canvas.placeText(
      'head',
      [{ lettering: { text, at: point(PAD, PAD + ASCENT + 1 + at * ROW), anchor: 'start' } }],
      paper,
    )
  canvas.outline('thick', 'original', corners(box))
  const sides = dimensionsOf(box, show(read.width), show(read.height))
  for (const side of sides) drawDimension(canvas, side)
  for (const side of sides) letterDimension(canvas, side, paper)

  drawExtremes(canvas, field, on, box)
  if (box.bottom - box.top > LOWEST) drawReadings(canvas, field, readings, on, box)
  letterExtremes(canvas, field, readings, on, box)

  const curves = curvesOf(field, deepest, step, limit, on)
  const above = { left: PAD, right: width - PAD, top: box.top - OVER, bottom: box.top }
  for (const curve of curves)
    if (!letterOnCurve(canvas, curve, curves, grown(box, -2))) letterAtEnd(canvas, curve, above)
  const lettered = canvas.occupied.map((one) => grown(one, 1))
  for (const { stroke, className, runs } of curves) canvas.curves(stroke, className, cutAround(runs, lettered))
  if (limit !== undefined && !withinLimit(field.spread, limit))
    canvas.lines('hatch', 'beyond-limit', hatchBelow(field.grid, field.greatest.stops - limit, box, lettered))

  const notes = footNotes(measuredSpread, limit !== undefined && !withinLimit(field.spread, limit))
  for (const [at, text] of notes.entries())
    canvas.placeText(
      'note',
      [{ lettering: { text, at: point(PAD, place.bottom + ASCENT + 2 + at * ROW), anchor: 'start' } }],
      {
        ...paper,
        bottom: place.bottom + 4 * ROW,
      },
    )
  const height = place.bottom + notes.length * ROW + PAD
  const description = describeEvenness({
    field,
    size: SHARED.times(withoutUnit(show(read.width)), show(read.height)),
    lamps: lamps.length,
    step,
    limit,
    readings,
    measuredSpread,
    place: (x, y) => describePlace(x, y, read.width as number, read.height as number, show),
  })
  return { node: canvas.node(height, title, description), title, description, omissions: read.omissions, width, height }
}

function describePlace(x: number, y: number, width: number, height: number, show: (metres: number) => string): string {
  const across = (x - 0.5) * width
  const up = (y - 0.5) * height
  const parts = [
    ...(across === 0 ? [] : [WORDS.across(show(Math.abs(across)), across > 0)]),
    ...(up === 0 ? [] : [WORDS.up(show(Math.abs(up)), up > 0)]),
  ]
  return parts.length === 0 ? WORDS.atCentre : WORDS.fromCentre(listText(parts))
}

function spreadHead(field: Field, limit: number | undefined, width: number): string {
  const spread = WORDS.spread(Number.isFinite(field.spread) ? stopsText(field.spread) : undefined)
  const whole = limit === undefined ? spread : WORDS.spreadOf(spread, figureText(limit))
  return textWidth(whole) < width - 2 * PAD ? whole : spread
}

function footNotes(measuredSpread: number | undefined, beyond: boolean): readonly string[] {
  return [
    ...(beyond ? [WORDS.hatched] : []),
    ...(measuredSpread === undefined ? [] : [WORDS.twoFigures, WORDS.measuredSpread(stopsText(measuredSpread))]),
  ]
}

function readingsOf(field: Field, measured: readonly number[] | undefined): readonly Reading[] {
  const points = measured?.length === 5 ? FIVE : NINE
  const computed = points.map((at) => field.stopsAt(at))
  const lit = computed.map((one) => (Number.isFinite(one) ? one : -12))
  const shifted = measured && arrangedAs(measured, lit)
  return points.map((at, which) => ({ at, computed: computed[which] as number, measured: shifted?.[which] }))
}

/** Places the map to scale, as large as possible, with space for dimensions on the right and below. */
function mapPlace(width: number, height: number, room: number, top: number): { box: Box; bottom: number } {
  const across = room - PAD - LANE - 12 - PAD
  const scale = Math.min(across / width, (across * TALLEST) / height)
  const [drawnWidth, drawnHeight] = [Math.max(2, width * scale), Math.max(2, height * scale)]
  const left = PAD + 4 + (across - drawnWidth) / 2
  const box = { left, right: left + drawnWidth, top, bottom: top + drawnHeight }
  return { box, bottom: box.bottom + LANE + 10 }
}

const dimensionsOf = (box: Box, width: string, height: string): readonly Dimension[] => [
  {
    className: 'dimension-width',
    direction: 'across',
    from: point(box.left, box.bottom),
    to: point(box.right, box.bottom),
    at: box.bottom + LANE,
    wordings: figures(width),
  },
  {
    className: 'dimension-height',
    direction: 'upright',
    from: point(box.right, box.top),
    to: point(box.right, box.bottom),
    at: box.right + LANE,
    wordings: figures(height),
  },
]

const DOT = 2

const dot = ({ x, y }: Point): readonly Point[] =>
  Array.from({ length: 8 }, (_, step) =>
    point(x + DOT * Math.cos((step * Math.PI) / 4), y + DOT * Math.sin((step * Math.PI) / 4)),
  )

/** Draws a dot at each reading point with the computed figure above and the measured one below. */
function drawReadings(
  canvas: Canvas,
  field: Field,
  readings: readonly Reading[],
  on: (share: Point) => Point,
  box: Box,
): void {
  const crosses = readings.map(({ at }) => on(at))
  for (const [which, here] of crosses.entries())
    if (!isAt([...field.least.at, ...field.greatest.at], (readings[which] as Reading).at))
      canvas.body('thin', 'reading-point', dot(here), { filled: true })
  const label = (at: Point): string | undefined =>
    at === readings.find((one) => isAt(field.least.at, one.at))?.at
      ? WORDS.least
      : at === readings.find((one) => isAt(field.greatest.at, one.at))?.at
        ? WORDS.greatest
        : undefined
  const marked = (at: Point): number => (isAt([...field.least.at, ...field.greatest.at], at) ? 6 : 0)
  for (const [which, { at, computed, measured }] of readings.entries()) {
    const figure = Number.isFinite(computed) ? signedStops(computed) : WORDS.dark
    const name = label(at)
    const rows: readonly (readonly string[])[] = [
      name === undefined ? [figure] : [WORDS.labelled(name, figure), figure],
      ...(measured === undefined ? [] : [[`(${signedStops(measured)})`]]),
    ]
    const here = crosses[which] as Point
    for (const [row, wordings] of rows.entries())
      canvas.placeText(
        `reading ${row === 0 ? 'computed' : 'measured'}`,
        readingPlaces(wordings, here, at, row, rows.length, marked(at)),
        box,
      )
  }
}

const isAt = (places: readonly Point[], at: Point): boolean => places.some((one) => one.x === at.x && one.y === at.y)

/** Places for the texts of a reading point: inwards from a point on an edge, above and below one in the middle. */
function* readingPlaces(
  wordings: readonly string[],
  here: Point,
  at: Point,
  row: number,
  rows: number,
  /** Space in pixels that a mark at the edge takes. */
  taken: number,
): Generator<TextPlacement> {
  const anchor = at.x === 0 ? 'start' : at.x === 1 ? 'end' : 'middle'
  const x = here.x + (at.x === 0 ? 7 : at.x === 1 ? -7 : 0)
  const line = 16
  const first =
    at.y === 1 ? here.y + 8 + taken + ASCENT : at.y === 0 ? here.y - 8 - taken - (rows - 1) * line : here.y - 7
  const middle = at.y === 0.5
  const y = middle && row > 0 ? here.y + 7 + ASCENT : first + row * line
  const inwards = at.y === 0 ? -1 : 1
  for (const off of [0, 4, 8, 12, 16, -4, -8, -12, -16].map((one) => one * inwards))
    yield { lettering: { text: wordings[0] as string, at: point(x, y + off), anchor } }
  for (const text of wordings.slice(1)) yield { lettering: { text, at: point(x, y), anchor } }
}

const EXTREMES = [
  { which: 'least', way: 1 },
  { which: 'greatest', way: -1 },
] as const

/** Draws triangles at the extremes, pointing down at the least and up at the greatest. */
function drawExtremes(canvas: Canvas, field: Field, on: (share: Point) => Point, box: Box): void {
  for (const { which, way } of EXTREMES) {
    // A dark part is an area, which the isolines show.
    if (!Number.isFinite(field[which].stops)) continue
    for (const at of field[which].at) {
      const here = on(at)
      const x = Math.min(box.right - 6, Math.max(box.left + 6, here.x))
      const y = Math.min(box.bottom - 6, Math.max(box.top + 6, here.y))
      canvas.body('thin', which, [point(x - 4.5, y - 4 * way), point(x + 4.5, y - 4 * way), point(x, y + 4 * way)])
    }
  }
}

/** Writes the figures of the extremes that are not reading points. */
function letterExtremes(
  canvas: Canvas,
  field: Field,
  readings: readonly Reading[],
  on: (share: Point) => Point,
  box: Box,
): void {
  for (const { which } of EXTREMES) {
    const { stops, at } = field[which]
    const [first] = at
    const known = readings.some((one) => isAt(at, one.at) || (which === 'least' && !Number.isFinite(one.computed)))
    if (!first || known) continue
    const figure = Number.isFinite(stops) ? signedStops(stops) : WORDS.dark
    canvas.placeText(which, around(on(first), [WORDS.labelled(WORDS[which], figure), figure]), box)
  }
}

/** Places around a point, nearest first. */
function* around(here: Point, wordings: readonly string[]): Generator<TextPlacement> {
  for (const text of wordings)
    for (const far of [9, 14, 20, 28, 38]) {
      yield { lettering: { text, at: point(here.x, here.y - far), anchor: 'middle' } }
      yield { lettering: { text, at: point(here.x, here.y + far + ASCENT), anchor: 'middle' } }
      for (const up of [0, far / 2, -far / 2]) {
        yield { lettering: { text, at: point(here.x + far, here.y + ASCENT / 2 - up), anchor: 'start' } }
        yield { lettering: { text, at: point(here.x - far, here.y + ASCENT / 2 - up), anchor: 'end' } }
      }
    }
}

/** The lines of the map: thin above the mean, dashed below it, thick at the mean, and a chain line at the limit. */
function curvesOf(
  field: Field,
  deepest: number,
  step: number,
  limit: number | undefined,
  on: (share: Point) => Point,
): readonly Curve[] {
  const decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2
  const runsAt = (level: number) => isoline(field.grid, level).map((run) => run.map(on))
  const levels = levelsBetween(deepest, field.greatest.stops, step).map((level): Curve => {
    const stroke: Stroke = level === 0 ? 'thick' : level > 0 ? 'thin' : 'dashed'
    return {
      stroke,
      className: level === 0 ? 'isoline mean' : 'isoline',
      text: level === 0 ? WORDS.mean : signedStops(level, decimals),
      runs: runsAt(level),
    }
  })
  const cut = limit === undefined ? undefined : field.greatest.stops - limit
  if (cut === undefined || cut <= field.least.stops) return levels
  return [{ stroke: 'chain', className: 'limit', text: WORDS.limitLine, runs: runsAt(cut) }, ...levels]
}
