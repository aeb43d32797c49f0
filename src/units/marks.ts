/**
 * Nominal third-stop marks. f-numbers follow ISO 517 (exact value sqrt(2)^k with thirds between), exposure times
 * ISO 516 (2^k), film and sensor speeds ISO 5800 / 12232 (2^(k/3) from ISO 100).
 */
interface Series {
  /** The marked figures, in order. */
  readonly marks: readonly number[]
  /** The exact value behind mark number `i`. */
  readonly exact: (i: number) => number
  /** The (fractional) mark number of a value. */
  readonly position: (value: number) => number
}

const F_MARKS = [
  0.5, 0.56, 0.63, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8,
  9, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64, 72, 81, 90, 102, 114, 128,
]
/** f/1 is the seventh mark of the series above. */
const F_ONE = F_MARKS.indexOf(1)

/** Seconds, or the figure under 1/ for the faster ones, from 60 s to 1/8000 s. */
const LONG_TIMES = [60, 50, 40, 30, 25, 20, 15, 13, 10, 8, 6, 5, 4, 3.2, 2.5, 2, 1.6, 1.3, 1, 0.8, 0.6]
const SHORT_TIMES = [
  2, 2.5, 3, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000,
  1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000,
]
const T_ONE = LONG_TIMES.indexOf(1)

const SPEED_MARKS = [
  6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600,
  2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800, 16000, 20000, 25600,
]
const S_HUNDRED = SPEED_MARKS.indexOf(100)

const APERTURES: Series = {
  marks: F_MARKS,
  exact: (i) => 2 ** ((i - F_ONE) / 6),
  position: (n) => 6 * Math.log2(n) + F_ONE,
}
const TIMES: Series = {
  marks: [...LONG_TIMES, ...SHORT_TIMES.map((n) => 1 / n)],
  exact: (i) => 2 ** ((T_ONE - i) / 3),
  position: (t) => T_ONE - 3 * Math.log2(t),
}
const SPEEDS: Series = {
  marks: SPEED_MARKS,
  exact: (i) => 100 * 2 ** ((i - S_HUNDRED) / 3),
  position: (s) => 3 * Math.log2(s / 100) + S_HUNDRED,
}

export type MarkedScale = 'aperture' | 'time' | 'speed'
const SERIES: Record<MarkedScale, Series> = { aperture: APERTURES, time: TIMES, speed: SPEEDS }

export interface Mark {
  /** The figure as marked: 5.6, 1/125 (as 0.008), 100. */
  readonly nominal: number
  /** The exact value behind the mark: 5.657, 1/128, 100. */
  readonly exact: number
  /** As engraved on the equipment: `f/5.6`, `1/125 s`, `ISO 100`. */
  readonly text: string
}

function markText(scale: MarkedScale, nominal: number): string {
  if (scale === 'aperture') return `f/${nominal}`
  if (scale === 'speed') return `ISO ${nominal}`
  return nominal <= 0.5 ? `1/${+(1 / nominal).toFixed(1)} s` : `${nominal} s`
}

const markAt = (scale: MarkedScale, i: number): Mark => {
  const series = SERIES[scale]
  const nominal = series.marks[i] as number
  return { nominal, exact: series.exact(i), text: markText(scale, nominal) }
}

/** The third-stop mark nearest to a value, by stops; undefined past half a third beyond the ends of the scale. */
export function nearestMark(scale: MarkedScale, value: number): Mark | undefined {
  if (!(value > 0)) return undefined
  const i = Math.round(SERIES[scale].position(value))
  return i >= 0 && i < SERIES[scale].marks.length ? markAt(scale, i) : undefined
}

/** The exact value behind a marked figure (5.6 is 5.657), or undefined where the figure is not on the scale. */
export function exactBehind(scale: MarkedScale, nominal: number): number | undefined {
  const i = SERIES[scale].marks.findIndex((mark) => Math.abs(mark - nominal) <= 1e-9 * mark)
  return i < 0 ? undefined : SERIES[scale].exact(i)
}

/** Every mark of a scale, in order. */
export const allMarks = (scale: MarkedScale): Mark[] => SERIES[scale].marks.map((_, i) => markAt(scale, i))
