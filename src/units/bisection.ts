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
