import type { Metres } from '../canvas/measures.ts'
import type { Lamp } from './set-up-inputs.ts'

/** Differences below half a millimetre cannot be seen in a drawing. */
const INVISIBLE: Metres = 5e-4

/** Whether two lengths in metres would be drawn alike. */
export const sameLength = (a: Metres, b: Metres): boolean => Math.abs(a - b) < INVISIBLE

/** Whether a length in metres would not be seen in a drawing. */
export const isZero = (length: Metres): boolean => Math.abs(length) < INVISIBLE

/** Whether the lamps are two that mirror each other in the centre line. */
export function isPair(lamps: readonly Lamp[]): boolean {
  const [first, second] = lamps
  return (
    lamps.length === 2 &&
    first !== undefined &&
    second !== undefined &&
    !isZero(first.x) &&
    sameLength(first.x, -second.x) &&
    sameLength(first.y, second.y) &&
    sameLength(first.z, second.z) &&
    sameLength(first.aim_x, -second.aim_x) &&
    sameLength(first.aim_y, second.aim_y)
  )
}

/** The lamps to draw in a view that hides one coordinate: lamps that would coincide are drawn once. */
export function lampsSeen(lamps: readonly Lamp[], hidden: 'x' | 'y' | 'z'): readonly Lamp[] {
  const seen = (['x', 'y', 'z', 'aim_x', 'aim_y'] as const).filter((one) => !one.endsWith(hidden))
  return lamps.filter(
    (lamp, at) => !lamps.slice(0, at).some((other) => seen.every((one) => sameLength(lamp[one], other[one]))),
  )
}

const MOST_DIMENSIONS = 3

/** The lamps whose distances from the centre line are dimensioned, by side, nearest first; a symmetric pair once. */
export function lampDistances(lamps: readonly Lamp[]): { left: readonly Lamp[]; right: readonly Lamp[] } {
  const seen: Lamp[] = []
  // Lamps on the right come first, so that the distance of a pair is dimensioned there.
  for (const lamp of [...lamps].sort((a, b) => b.x - a.x)) {
    if (!isZero(lamp.x) && !seen.some((other) => sameLength(Math.abs(other.x), Math.abs(lamp.x)))) seen.push(lamp)
  }
  const nearest = seen.sort((a, b) => Math.abs(a.x) - Math.abs(b.x)).slice(0, MOST_DIMENSIONS)
  return { left: nearest.filter((lamp) => lamp.x < 0), right: nearest.filter((lamp) => lamp.x > 0) }
}

/** The height of a lamp nearer to the centre line than this would be drawn through the camera. */
const OVER_CENTRE: Metres = 0.1

/** The lamps above the original, whose heights are dimensioned beside those of the camera. */
export const lampsOverCentre = (lamps: readonly Lamp[]): readonly Lamp[] =>
  lamps
    .filter(
      (lamp, at) => Math.abs(lamp.x) < OVER_CENTRE && !lamps.slice(0, at).some((one) => sameLength(one.z, lamp.z)),
    )
    .slice(0, 1)

/** The lamps whose heights are dimensioned, each on a separate line below the lamp. */
export function lampHeights(lamps: readonly Lamp[]): readonly Lamp[] {
  const chosen: Lamp[] = []
  for (const lamp of [...lamps].sort((a, b) => a.x - b.x)) {
    if (Math.abs(lamp.x) < OVER_CENTRE) continue
    const known = chosen.some((other) => sameLength(other.z, lamp.z))
    const taken = chosen.some((other) => sameLength(other.x, lamp.x))
    if (!known && !taken && chosen.length < MOST_DIMENSIONS) chosen.push(lamp)
  }
  return chosen
}

/** The lamps whose distances from the middle are dimensioned in the plan, by side, nearest first. */
export function lampOffsets(lamps: readonly Lamp[]): { up: readonly Lamp[]; down: readonly Lamp[] } {
  const seen: Lamp[] = []
  for (const lamp of [...lamps].sort((a, b) => b.x - a.x || b.y - a.y)) {
    const known = seen.some((other) => sameLength(Math.abs(other.y), Math.abs(lamp.y)))
    if (!isZero(lamp.y) && !known) seen.push(lamp)
  }
  const nearest = seen.sort((a, b) => Math.abs(a.y) - Math.abs(b.y)).slice(0, 2)
  return { up: nearest.filter((lamp) => lamp.y > 0), down: nearest.filter((lamp) => lamp.y < 0) }
}

/** The number of dimension lines beside the plan. */
export function offsetLanes(lamps: readonly Lamp[]): number {
  const { up, down } = lampOffsets(lamps)
  return Math.max(up.length, down.length)
}
