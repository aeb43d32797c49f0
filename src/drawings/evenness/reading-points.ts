import { type Point, point } from '../canvas/geometry.ts'
import { EVENNESS_WORDS as WORDS } from './words.ts'

/** Points at which light is read over an original, in reading order, as fractions from its lower left corner. */
export const NINE: readonly Point[] = [1, 0.5, 0].flatMap((y) => [0, 0.5, 1].map((x) => point(x, y)))
/** The corners and the centre, in reading order. */
export const FIVE: readonly Point[] = NINE.filter((_, at) => at % 2 === 0)

/** Where a reading is taken, in words: `upper left`. */
export const readingPointName = ({ x, y }: Point): string => {
  const up = y === 1 ? WORDS.upper : y === 0 ? WORDS.lower : ''
  const across = x === 0 ? WORDS.left : x === 1 ? WORDS.right : ''
  if (up && across) return `${up} ${across}`
  if (!up && !across) return WORDS.centre
  return WORDS.edge(up || across)
}

/** Readings in stops shifted to the mean of others: a meter and a formula can only be compared in shape. */
export function arrangedAs(readings: readonly number[], others: readonly number[]): readonly number[] {
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length
  const shift = mean(others) - mean(readings)
  return readings.map((one) => one + shift)
}
