import { bisect } from '../../units/index.ts'

/** Below this half-angle the series is the more exact. */
const SERIES_BELOW_RADIANS = 0.3

/** 1 − sin φ/φ, exact for small φ too. */
function shortfall(phi: number): number {
  if (phi >= SERIES_BELOW_RADIANS) return 1 - Math.sin(phi) / phi
  const q = phi * phi
  return (q / 6) * (1 - (q / 20) * (1 - (q / 42) * (1 - (q / 72) * (1 - q / 110))))
}

/** Half the angle (rad) that an arc spans above its chord, both in the same unit; 0 for equal lengths. */
export function halfAngleOfArc(chord: number, arc: number): number {
  const share = (arc - chord) / arc
  return bisect((phi) => shortfall(phi) >= share, { failing: 0, passing: Math.PI }).failing
}
