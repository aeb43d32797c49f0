/** The chance that a sample of n from a lot finds none of the bad ones (hypergeometric). */
function missChance(lot: number, bad: number, n: number, enough: number): number {
  // C(lot − bad, n)/C(lot, n) is symmetrical in bad and n: the shorter product will do.
  const [fewer, more] = bad < n ? [bad, n] : [n, bad]
  let chance = 1
  for (let i = 0; i < fewer; i++) {
    chance *= Math.max(0, lot - more - i) / (lot - i)
    if (chance <= enough) return chance
  }
  return chance
}

/** The least sample from a lot that finds at least one of `bad` bad ones with the given confidence (0 to 1). */
export function inspectionCount(lot: number, bad: number, confidence: number): number {
  const allowed = (1 - confidence) * (1 + 1e-12)
  let low = 0
  let high = lot - bad + 1
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (missChance(lot, bad, middle, allowed) <= allowed) high = middle
    else low = middle
  }
  return high
}
