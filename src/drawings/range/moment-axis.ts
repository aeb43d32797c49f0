import { utcTicks } from 'd3-time'
import type { RangeTable } from '../../worksheet/analysis/followed.ts'
import type { Axis, Span } from '../plots/axes.ts'

const DAY = 86_400

/** The least distance between ticks in pixels: `25 Nov 2026` and a gap. */
const APART = 84

const format = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', hourCycle: 'h23', ...options })
const CLOCK = format({ hour: '2-digit', minute: '2-digit' })
const SECONDS = format({ hour: '2-digit', minute: '2-digit', second: '2-digit' })
const DATE = format({ day: 'numeric', month: 'short' })
const MONTH = format({ month: 'short', year: 'numeric' })
const YEAR = format({ year: 'numeric' })

/** An axis of dates or of times of day, in seconds, with round dates and times marked. */
export function momentAxis(
  [from, to]: readonly [number, number],
  span: Span,
  heading: string,
  moments: NonNullable<RangeTable['moments']>,
): Axis {
  // A single moment is placed in the middle of an axis.
  const half = to > from ? 0 : moments === 'days' ? DAY : DAY / 24
  const [start, end] = [from - half, to + half]
  const count = Math.max(2, Math.floor(Math.abs(span[1] - span[0]) / APART))
  const ticks = utcTicks(new Date(start * 1000), new Date(end * 1000), count)
  const step = ((ticks[1]?.getTime() ?? 0) - (ticks[0]?.getTime() ?? 0)) / 1000
  const text = (tick: Date): string => {
    const isMidnight = tick.getTime() % (DAY * 1000) === 0
    if (step < 60) return SECONDS.format(tick)
    if (step < DAY && !(isMidnight && moments === 'days')) return CLOCK.format(tick)
    if (step < 28 * DAY) return DATE.format(tick)
    return step < 360 * DAY ? MONTH.format(tick) : YEAR.format(tick)
  }
  return {
    from: start,
    to: end,
    heading,
    ticks: ticks.map((tick) => ({ value: tick.getTime() / 1000, text: text(tick) })),
    place: (value) => span[0] + ((value - start) / (end - start)) * (span[1] - span[0]),
    at: (share) => start + (end - start) * share,
  }
}
