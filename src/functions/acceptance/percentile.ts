/** The value that a share of a list does not exceed: in order, linear between the neighbours of 1 + share (n − 1). */
export function percentile(values: readonly number[], share: number): number {
  const sorted = Float64Array.from(values).sort()
  const place = share * (sorted.length - 1)
  const below = Math.floor(place)
  const low = sorted[below] as number
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number
  return low + (place - below) * (high - low)
}
