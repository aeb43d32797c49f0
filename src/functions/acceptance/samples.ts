/** A straight line through points, with the standard deviations that its residuals imply. */
export interface FittedLine {
  readonly slope: number
  readonly intercept: number
  readonly slope_deviation: number
  readonly intercept_deviation: number
  /** √(Σ residual²/(n − 2)) */
  readonly residual_deviation: number
}

/**
 * The arithmetic mean of one value or more. Dividing first keeps the sum of very large values finite; the mean of what
 * is left then corrects the rounding of the first pass.
 */
export function meanOf(values: readonly number[]): number {
  const rough = values.reduce((sum, value) => sum + value / values.length, 0)
  if (!Number.isFinite(rough)) return rough
  return rough + values.reduce((sum, value) => sum + (value - rough) / values.length, 0)
}

/**
 * The value that a share of a list does not exceed, linear between neighbours in order of size.
 * @param values one value or more
 * @param share from 0 (the least) to 1 (the greatest)
 */
export function percentileOf(values: readonly number[], share: number): number {
  const sorted = Float64Array.from(values).sort()
  const place = share * (sorted.length - 1)
  const below = Math.floor(place)
  const low = sorted[below] as number
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number
  return low + (place - below) * (high - low)
}

/**
 * The standard deviation of a sample, √(Σ (x − mean)²/(n − 1)), of two values or more. It subtracts the mean first and
 * corrects for the mean’s own rounding (the corrected two-pass algorithm: T. F. Chan, G. H. Golub, R. J. LeVeque,
 * The American Statistician 37, 1983), so that digits that all values share cost the deviation none.
 */
export function standardDeviationOf(values: readonly number[]): number {
  const mean = meanOf(values)
  let squares = 0
  let rest = 0
  for (const value of values) {
    const off = value - mean
    squares += off * off
    rest += off
  }
  return Math.sqrt(Math.max(0, squares - (rest * rest) / values.length) / (values.length - 1))
}

/**
 * Least squares of y on x, about the means so that large offsets cost no digits.
 * @param x abscissae of three points or more, not all equal
 * @param y as many ordinates
 */
export function fitLine(x: readonly number[], y: readonly number[]): FittedLine {
  const [meanX, meanY] = [meanOf(x), meanOf(y)]
  let xx = 0
  let xy = 0
  for (const [i, value] of x.entries()) {
    xx += (value - meanX) ** 2
    xy += (value - meanX) * ((y[i] as number) - meanY)
  }
  const slope = xy / xx
  const residuals = x.reduce((sum, value, i) => sum + ((y[i] as number) - meanY - slope * (value - meanX)) ** 2, 0)
  const residualDeviation = Math.sqrt(residuals / (x.length - 2))
  return {
    slope,
    intercept: meanY - slope * meanX,
    slope_deviation: residualDeviation / Math.sqrt(xx),
    intercept_deviation: residualDeviation * Math.sqrt(1 / x.length + meanX ** 2 / xx),
    residual_deviation: residualDeviation,
  }
}
