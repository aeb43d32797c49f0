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
