import { listText } from '../../units/plural.ts'
import { signedStops, stopsText } from '../../units/stops.ts'
import type { Point } from '../canvas/geometry.ts'
import type { Stops } from '../canvas/measures.ts'
import type { Extreme, Field } from './evenness-field.ts'
import { readingPointName } from './reading-points.ts'
import { EVENNESS_WORDS as WORDS } from './words.ts'

/** A reading point with the computed light and, if it was read, the measured one, in stops from the mean. */
export interface Reading {
  readonly at: Point
  readonly computed: Stops
  readonly measured: Stops | undefined
}

export interface EvennessFigures {
  readonly field: Field
  readonly size: string
  readonly lamps: number
  readonly step: Stops
  readonly limit: Stops | undefined
  readonly readings: readonly Reading[]
  readonly measuredSpread: Stops | undefined
  /** Describes a point given in fractions of the original. */
  readonly place: (x: number, y: number) => string
}

/** Whether a spread is within a limit; differences in the last digits are ignored. */
export const withinLimit = (spread: Stops, limit: Stops): boolean => spread <= limit * (1 + 1e-9)

/** A spread with its unit; without limit if part of the original is dark. */
const spreadText = (spread: Stops): string => (Number.isFinite(spread) ? stopsText(spread) : WORDS.unlimited)

const placeOf = ({ at }: Extreme, place: EvennessFigures['place']): string => {
  const [first] = at as readonly [Point]
  const corners = at.filter(({ x, y }) => (x === 0 || x === 1) && (y === 0 || y === 1))
  if (at.length === 4 && corners.length === 4) return WORDS.inFourCorners
  const named = at.filter(({ x, y }) => [0, 0.5, 1].includes(x) && [0, 0.5, 1].includes(y))
  if (named.length === at.length) return WORDS.at(listText(named.map(readingPointName)))
  return place(first.x, first.y)
}

const extremeText = (extreme: Extreme, place: EvennessFigures['place']): string =>
  WORDS.extremeAt(
    Number.isFinite(extreme.stops) ? `${signedStops(extreme.stops)} stop` : WORDS.noLightAtAll,
    placeOf(extreme, place),
  )

/** The description of the map: every figure it shows in sentences. */
export function describeEvenness(figures: EvennessFigures): string {
  const { field, size, lamps, step, limit, readings, measuredSpread, place } = figures
  const sentences = [
    WORDS.introduction(lamps, size, step),
    WORDS.extremes(extremeText(field.greatest, place), extremeText(field.least, place), spreadText(field.spread)),
  ]
  if (limit !== undefined)
    sentences.push((withinLimit(field.spread, limit) ? WORDS.withinLimit : WORDS.beyondLimit)(stopsText(limit)))
  const computed = readings.map(({ at, computed: stops }) =>
    WORDS.labelled(readingPointName(at), Number.isFinite(stops) ? signedStops(stops) : WORDS.noReading),
  )
  sentences.push(WORDS.computed(computed.join(', ')))
  const read = readings.filter(isRead)
  const [first, ...others] = read
  if (measuredSpread !== undefined && first) {
    const measured = read.map((one) => WORDS.labelled(readingPointName(one.at), signedStops(one.measured)))
    sentences.push(WORDS.measured(measured.join(', '), stopsText(measuredSpread)))
    const worst = others.reduce((a, b) => (difference(b) > difference(a) ? b : a), first)
    sentences.push(WORDS.worstPoint(readingPointName(worst.at), spreadText(difference(worst))))
  }
  return sentences.join(' ')
}

const isRead = (reading: Reading): reading is Reading & { readonly measured: Stops } => reading.measured !== undefined

const difference = ({ computed, measured }: Reading & { readonly measured: Stops }): Stops =>
  Math.abs(computed - measured)
