import { signedStops, stopsText } from '../../units/stops.ts'
import { Canvas } from '../canvas/canvas.ts'
import type { Draw, DrawingInputs } from '../canvas/drawing-options.ts'
import { type Point, point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import type { Stops } from '../canvas/measures.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { figureText } from '../canvas/text-figures.ts'
import { TITLES } from '../canvas/words.ts'
import { ABOVE, BELOW, drawAxes, figuresWidth, linearAxis, type Plot } from '../plots/axes.ts'
import { numbersIn } from '../plots/given-values.ts'
import { OVER_TIME_WORDS as WORDS } from './words.ts'

const NARROWEST = 240
const PAD = 4
const MINUTE = 60
const HOUR = 3600
const DAY = 24 * HOUR
/** Spans shorter than this are shown in minutes, s. */
const SHORT = 2 * HOUR
/** Longer ones are shown in days, s. */
const LONG = 3 * DAY
const RADIUS = 4

interface Moment {
  /** s since the first. */
  readonly after: number
  readonly change: Stops
}

/** Draws how the light of a card changed over the hours, with the change allowed on both sides of the first. */
export const drawOverTime: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES['over-time']
  const omissions: string[] = []
  const limit = numberReader(omissions).positive(inputs.limit, WORDS.limit, 100)
  const moments = momentsIn(inputs, omissions)
  if (moments.length < 2) return nothingDrawn(width, title, omissions, WORDS.notEnough)

  const last = Math.max(...moments.map(({ after }) => after))
  const [unit, heading, spanText] =
    last < SHORT
      ? ([MINUTE, WORDS.minutes, WORDS.spanMinutes] as const)
      : last < LONG
        ? ([HOUR, WORDS.hours, WORDS.spanHours] as const)
        : ([DAY, WORDS.days, WORDS.spanDays] as const)
  const spanOf = (seconds: number): string => spanText(figureText(seconds / unit))
  const tall = Math.round(Math.min(220, Math.max(120, width * 0.4)))
  const [top, bottom] = [PAD + ABOVE + 8, PAD + ABOVE + 8 + tall]
  const most = Math.max(limit ?? 0, ...moments.map(({ change }) => Math.abs(change)))
  const y = linearAxis([-most, most], [bottom, top], WORDS.stops)
  const left = PAD + figuresWidth(y)
  const right = width - PAD - 12
  const x = linearAxis([0, last / unit], [left, right], heading)
  const plot: Plot = { box: { left, right, top, bottom }, x, y }
  const height = bottom + BELOW + PAD
  const paper = { left: 0, right: width, top: 0, bottom: height }

  const canvas = new Canvas(width)
  const on = ({ after, change }: Moment): Point => point(x.place(after / unit), y.place(change))
  const places = moments.map(on)
  canvas.line('thin', 'unchanged', point(left, y.place(0)), point(right, y.place(0)))
  for (const side of limit === undefined ? [] : [limit, -limit])
    canvas.line('dashed', 'limit', point(left, y.place(side)), point(right, y.place(side)))
  canvas.curves('thick', 'change', [places])
  for (const [at, place] of places.entries())
    canvas.body('thin', 'moment', circle(place), { filled: !isBeyond(moments[at] as Moment, limit) })
  drawAxes(canvas, plot, paper)
  if (limit !== undefined) {
    const text = WORDS.allowed(stopsText(limit))
    canvas.placeText(
      'limit label',
      [-5, 5 + ASCENT].flatMap((off) =>
        [right, left + 60, (left + right) / 2].map((at) => ({
          lettering: {
            text,
            at: point(at, y.place(limit) + off),
            anchor: at === right ? ('end' as const) : ('middle' as const),
          },
        })),
      ),
      paper,
    )
  }
  const description = describe(moments, limit, spanOf)
  return {
    node: canvas.node(height, title, description),
    title,
    description,
    table: {
      head: [WORDS.after, WORDS.change],
      rows: moments.map(({ after, change }) => [spanOf(after), signedStops(change)]),
    },
    omissions,
    width,
    height,
  }
}

/** The changes with their times, in order of time. */
function momentsIn(inputs: DrawingInputs, omissions: string[]): readonly Moment[] {
  const [time, changes] = [numbersIn(inputs.time), numbersIn(inputs.changes)]
  if (!time || !changes) return []
  if (time.length !== changes.length) {
    omissions.push(WORDS.unlike)
    return []
  }
  return time
    .map((after, at): Moment => ({ after, change: changes[at] as number }))
    .filter(({ after, change }) => after >= 0 && after < 1e9 && Math.abs(change) < 100)
    .sort((one, other) => one.after - other.after)
}

const isBeyond = ({ change }: Moment, limit: Stops | undefined): boolean =>
  limit !== undefined && Math.abs(change) > limit * (1 + 1e-9)

const circle = ({ x, y }: Point): readonly Point[] =>
  Array.from({ length: 12 }, (_, step) =>
    point(x + RADIUS * Math.cos((step * Math.PI) / 6), y + RADIUS * Math.sin((step * Math.PI) / 6)),
  )

function describe(moments: readonly Moment[], limit: Stops | undefined, spanOf: (seconds: number) => string): string {
  const most = moments.reduce((a, b) => (Math.abs(b.change) > Math.abs(a.change) ? b : a))
  const beyond = moments.filter((one) => isBeyond(one, limit)).length
  return [
    WORDS.introduction(moments.length, spanOf((moments.at(-1) as Moment).after)),
    WORDS.greatest(signedStops(most.change), spanOf(most.after)),
    ...(limit === undefined
      ? []
      : [beyond === 0 ? WORDS.within(stopsText(limit)) : WORDS.beyond(beyond, stopsText(limit))]),
  ].join(' ')
}
