/** Below this half-angle (rad) the series is the more exact. */
const SERIES_BELOW = 0.3
const HALVINGS = 200

/** 1 − sin φ/φ, exact for small φ too. */
function shortfall(phi: number): number {
  if (phi >= SERIES_BELOW) return 1 - Math.sin(phi) / phi
  const q = phi * phi
  return (q / 6) * (1 - (q / 20) * (1 - (q / 42) * (1 - (q / 72) * (1 - q / 110))))
}

/** Half the angle (rad) that an arc spans above its chord, both in the same unit; 0 for equal lengths. */
export function halfAngleOfArc(chord: number, arc: number): number {
  const wanted = (arc - chord) / arc
  let low = 0
  let high = Math.PI
  for (let i = 0; i < HALVINGS && high > low; i++) {
    const middle = (low + high) / 2
    if (middle === low || middle === high) break
    if (shortfall(middle) < wanted) low = middle
    else high = middle
  }
  return low
}
