import type { Lamp } from '../canvas/drawing-unit.ts'

/** Half a millimetre apart is the same place to a drawing. */
export const sameLength = (a: number, b: number): boolean => Math.abs(a - b) < 5e-4

/** Lamps that fall on one another in a view are drawn once. */
export function lampsSeen(lamps: readonly Lamp[], hidden: 'x' | 'y' | 'z'): readonly Lamp[] {
  const seen = (['x', 'y', 'z', 'aim_x', 'aim_y'] as const).filter((one) => !one.endsWith(hidden))
  return lamps.filter(
    (lamp, at) => !lamps.slice(0, at).some((other) => seen.every((one) => sameLength(lamp[one], other[one]))),
  )
}

const MOST_DIMENSIONS = 3

/** The lamps whose distances from the centre line are given, by side, the nearest first: a symmetrical pair only once. */
export function lampDistances(lamps: readonly Lamp[]): { left: readonly Lamp[]; right: readonly Lamp[] } {
  const seen: Lamp[] = []
  // Those on the right first: a pair's distance is read there.
  for (const lamp of [...lamps].sort((a, b) => b.x - a.x)) {
    if (Math.abs(lamp.x) > 5e-4 && !seen.some((other) => sameLength(Math.abs(other.x), Math.abs(lamp.x))))
      seen.push(lamp)
  }
  const nearest = seen.sort((a, b) => Math.abs(a.x) - Math.abs(b.x)).slice(0, MOST_DIMENSIONS)
  return { left: nearest.filter((lamp) => lamp.x < 0), right: nearest.filter((lamp) => lamp.x > 0) }
}

/** Nearer to the centre line than this a lamp's height would be drawn through the camera. */
const OVER_CENTRE = 0.1

/** The lamps over the original whose heights are given beside the camera's. */
export const lampsOverCentre = (lamps: readonly Lamp[]): readonly Lamp[] =>
  lamps
    .filter(
      (lamp, at) => Math.abs(lamp.x) < OVER_CENTRE && !lamps.slice(0, at).some((one) => sameLength(one.z, lamp.z)),
    )
    .slice(0, 1)

/** The lamps whose heights are given, each on a line of its own under the lamp. */
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

/** The lamps whose distances up and down from the middle are given in plan, by side, the nearest first. */
export function lampOffsets(lamps: readonly Lamp[]): { up: readonly Lamp[]; down: readonly Lamp[] } {
  const seen: Lamp[] = []
  for (const lamp of [...lamps].sort((a, b) => b.x - a.x || b.y - a.y)) {
    const known = seen.some((other) => sameLength(Math.abs(other.y), Math.abs(lamp.y)))
    if (Math.abs(lamp.y) > 5e-4 && !known) seen.push(lamp)
  }
  const nearest = seen.sort((a, b) => Math.abs(a.y) - Math.abs(b.y)).slice(0, 2)
  return { up: nearest.filter((lamp) => lamp.y > 0), down: nearest.filter((lamp) => lamp.y < 0) }
}

/** How many dimension lines stand beside the plan. */
export function offsetLanes(lamps: readonly Lamp[]): number {
  const { up, down } = lampOffsets(lamps)
  return Math.max(up.length, down.length)
}
