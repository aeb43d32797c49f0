/** Two sides of a threshold: a value on which a condition fails and one on which it passes. */
export interface Threshold {
  readonly failing: number
  readonly passing: number
}

interface Precision {
  /** The most times the way between the two is halved. */
  readonly halvings?: number
  /** How near the two need to come, which may depend on where they are. */
  readonly tolerance?: (at: Threshold) => number
}

/** Halving a double’s range this often leaves two neighbours. */
const MOST_HALVINGS = 200

/**
 * Narrows a threshold by halving. The condition is to fail on the one side of it and pass on the other; what it does
 * elsewhere does not matter. Ends where the two are as near as asked, or are neighbouring doubles.
 */
export function bisect(
  passes: (x: number) => boolean,
  start: Threshold,
  { halvings = MOST_HALVINGS, tolerance = () => 0 }: Precision = {},
): Threshold {
  let { failing, passing } = start
  for (let i = 0; i < halvings && Math.abs(passing - failing) > tolerance({ failing, passing }); i++) {
    const middle = (failing + passing) / 2
    if (middle === failing || middle === passing) break
    if (passes(middle)) passing = middle
    else failing = middle
  }
  return { failing, passing }
}

const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * Where a function of one variable is least between two ends, by golden section: it is to fall and then to rise there.
 * @param width how near the ends of the remaining interval need to come
 */
export function leastBetween(from: number, to: number, f: (x: number) => number, width: number): number {
  let [low, high] = [from, to]
  let left = high - GOLDEN * (high - low)
  let right = low + GOLDEN * (high - low)
  let [atLeft, atRight] = [f(left), f(right)]
  while (high - low > width) {
    if (atLeft < atRight) {
      ;[high, right, atRight] = [right, left, atLeft]
      left = high - GOLDEN * (high - low)
      atLeft = f(left)
    } else {
      ;[low, left, atLeft] = [left, right, atRight]
      right = low + GOLDEN * (high - low)
      atRight = f(right)
    }
    if (left === low || right === high) break
  }
  return (low + high) / 2
}
