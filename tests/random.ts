/** The same numbers between 0 and 1 every time, of a seed from 1 to 2147483646 (Park and Miller 1988). */
export function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}
