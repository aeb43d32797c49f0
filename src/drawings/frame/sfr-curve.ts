import { Canvas, type TextPlacement } from '../canvas/canvas.ts'
import { type Point, point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import { figureText } from '../canvas/text-figures.ts'
import type { Drawing } from '../canvas/tree.ts'
import { ABOVE, BELOW, drawAxes, figuresWidth, linearAxis, type Plot } from '../plots/axes.ts'
import { FRAME_DRAWING_WORDS as WORDS } from './words.ts'

type Reading = Readonly<Record<string, unknown>>

const PAD = 4
const NARROWEST = 240
const LEVELS = [
  { part: 'mtf50', level: 0.5, text: WORDS.half },
  { part: 'mtf10', level: 0.1, text: WORDS.tenth },
] as const

const numberAt = (reading: Reading, part: string): number | undefined => {
  const value = reading[part]
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined
}

/** Draws the response of an edge, with where it falls to one half and one tenth; undefined where a reading has no curve. */
export function drawSfrCurve(reading: Reading, room: number): Drawing | undefined {
  const pairs = (Array.isArray(reading.sfr) ? reading.sfr : []).filter(
    (one): one is [number, number] =>
      Array.isArray(one) &&
      one.length === 2 &&
      one.every((value) => Number.isFinite(value)) &&
      one[0] >= 0 &&
      one[0] <= 1,
  )
  if (pairs.length < 2) return undefined
  const width = Math.max(NARROWEST, room)
  const tall = Math.round(Math.min(240, width * 0.5))
  const [top, bottom] = [PAD + ABOVE + 6, PAD + ABOVE + 6 + tall]
  const most = Math.min(10, Math.max(1, ...pairs.map(([, response]) => response)))
  const y = linearAxis([0, most], [bottom, top], WORDS.response)
  const [left, right] = [PAD + figuresWidth(y), width - PAD - 12]
  const x = linearAxis([0, 1], [left, right], WORDS.frequency)
  const plot: Plot = { box: { left, right, top, bottom }, x, y }
  const height = bottom + BELOW + PAD
  const paper = { left: 0, right: width, top: 0, bottom: height }
  const canvas = new Canvas(width)
  canvas.curves('thick', 'response', [
    pairs
      .filter(([, response]) => response >= 0 && response <= most)
      .map(([at, response]) => point(x.place(at), y.place(response))),
  ])
  for (const { part, level, text } of LEVELS) {
    const at = numberAt(reading, part)
    if (at === undefined || at > 1) continue
    const here = point(x.place(at), y.place(level))
    canvas.curves('dashed', `mark ${part}`, [[point(left, here.y), here, point(here.x, bottom)]])
    canvas.placeText(`mark ${part}`, [...beside(here, text(figureText(at)))], paper)
  }
  drawAxes(canvas, plot, paper)
  const where = (part: string): string => {
    const at = numberAt(reading, part)
    return at === undefined ? WORDS.notReached : WORDS.reachedAt(figureText(at))
  }
  const description = WORDS.curveDescribed(
    where('mtf50'),
    where('mtf10'),
    figureText(numberAt(reading, 'greatest') ?? most),
  )
  const title = WORDS.curve
  return { node: canvas.node(height, title, description), title, description, omissions: [], width, height }
}

/** Above the mark to the right, else below or above its line to the left. */
function* beside({ x, y }: Point, text: string): Generator<TextPlacement> {
  for (const off of [0, 10, 20, 30]) yield { lettering: { text, at: point(x + 6 + off, y - 6 - off), anchor: 'start' } }
  for (const off of [6, 20, 40, 60, 80]) {
    yield { lettering: { text, at: point(x - off, y + 3 + ASCENT), anchor: 'end' } }
    yield { lettering: { text, at: point(x - off, y - 5), anchor: 'end' } }
  }
}
