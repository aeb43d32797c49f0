import type { Point } from '../canvas/geometry.ts'
import { capital, figureText, series, signedText, stopsText } from '../canvas/text-figures.ts'
import type { Extreme, Field } from './evenness-field.ts'
import { readingPointName } from './reading-points.ts'

/** A point of the field with what is computed there and, where it was read, measured. */
export interface Reading {
  readonly at: Point
  readonly computed: number
  readonly measured: number | undefined
}

export interface EvennessFigures {
  readonly field: Field
  readonly size: string
  readonly lamps: number
  readonly step: number
  readonly limit: number | undefined
  readonly readings: readonly Reading[]
  readonly measuredSpread: number | undefined
  readonly decimals: number
  readonly show: (shareX: number, shareY: number) => string
}

/** The limit of a spread, with a rounding of the last digit forgiven. */
export const withinLimit = (spread: number, limit: number): boolean => spread <= limit * (1 + 1e-9)

const placeOf = ({ at }: Extreme, show: EvennessFigures['show']): string => {
  const [first] = at as readonly [Point]
  const corners = at.filter(({ x, y }) => (x === 0 || x === 1) && (y === 0 || y === 1))
  if (at.length === 4 && corners.length === 4) return 'in the four corners'
  const named = at.filter(({ x, y }) => [0, 0.5, 1].includes(x) && [0, 0.5, 1].includes(y))
  if (named.length === at.length) return `at the ${series(named.map((one) => readingPointName(one)))}`
  return show(first.x, first.y)
}

const stopsOf = (value: number, decimals: number): string =>
  Number.isFinite(value) ? `${signedText(value, decimals)} stop` : 'no light at all'

/** The map in sentences, with every figure it shows. */
export function describeEvenness(figures: EvennessFigures): string {
  const { field, size, lamps, step, limit, readings, measuredSpread, decimals, show } = figures
  const sentences = [
    `The light of ${lamps === 1 ? 'one lamp' : `${lamps} lamps`} over the original, ${size}, in stops from its mean by area, a line every ${step} stop.`,
    `Greatest ${stopsOf(field.greatest.stops, decimals)} ${placeOf(field.greatest, show)}; least ${stopsOf(field.least.stops, decimals)} ${placeOf(field.least, show)}; spread ${stopsText(field.spread)}.`,
  ]
  if (limit !== undefined)
    sentences.push(
      withinLimit(field.spread, limit)
        ? `${figureText(limit)} stop is allowed: all of the original is within it.`
        : `${figureText(limit)} stop is allowed: where it is hatched, the light is more than that below the greatest.`,
    )
  const computed = readings.map(
    (one) =>
      `${readingPointName(one.at)} ${Number.isFinite(one.computed) ? signedText(one.computed, decimals) : 'no light'}`,
  )
  sentences.push(`Computed, in reading order: ${computed.join(', ')}.`)
  if (measuredSpread !== undefined) {
    const measured = readings
      .filter((one) => one.measured !== undefined)
      .map((one) => `${readingPointName(one.at)} ${signedText(one.measured as number, decimals)}`)
    sentences.push(
      `Measured, brought to the same mean: ${measured.join(', ')}; their spread is ${stopsText(measuredSpread)}.`,
    )
    const worst = readings.filter((one) => one.measured !== undefined).reduce((a, b) => (apart(b) > apart(a) ? b : a))
    sentences.push(`They differ most at the ${readingPointName(worst.at)}, by ${stopsText(apart(worst))}.`)
  }
  return sentences.map(capital).join(' ')
}

const apart = ({ computed, measured }: Reading): number => Math.abs(computed - (measured ?? computed))
