import { type Point, point } from '../canvas/geometry.ts'

/** Where light is read over an original, in reading order: shares of it from the lower left corner. */
export const NINE: readonly Point[] = [1, 0.5, 0].flatMap((y) => [0, 0.5, 1].map((x) => point(x, y)))
/** The corners and the centre. */
export const FIVE: readonly Point[] = NINE.filter((_, at) => at % 2 === 0)

/** What each is called. */
export const readingPointName = ({ x, y }: Point): string => {
  const up = y === 1 ? 'upper' : y === 0 ? 'lower' : ''
  const across = x === 0 ? 'left' : x === 1 ? 'right' : ''
  if (up && across) return `${up} ${across}`
  if (!up && !across) return 'centre'
  return up ? `${up} edge` : `${across} edge`
}

/** Readings in stops brought to the same mean as others: two meters, or a meter and a formula, agree in shape alone. */
export function arrangedAs(readings: readonly number[], others: readonly number[]): readonly number[] {
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length
  const shift = mean(others) - mean(readings)
  return readings.map((one) => one + shift)
}
