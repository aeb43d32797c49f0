import { DARK, evennessOf, illuminanceAt, type LampNumbers, mapField } from '../../functions/lamps/light-field.ts'
import { distance, type Point, point } from '../canvas/geometry.ts'
import type { Stops } from '../canvas/measures.ts'
import type { Grid } from '../plots/isolines.ts'

/** Samples per side: few while something is dragged, so that the next frame is on time, and more at rest. */
const QUICK = 64
const SETTLED = 129

/** Darker points are drawn as if they were this far from the mean. */
const DARKEST: Stops = -12

export interface Extreme {
  /** Difference from the mean; minus infinity where no light falls. */
  readonly stops: Stops
  /** Position in fractions of the original from its lower left corner; several if symmetry makes them equal. */
  readonly at: readonly Point[]
}

/** The light on an original, in stops from its mean by area. */
export interface Field {
  readonly grid: Grid
  readonly least: Extreme
  readonly greatest: Extreme
  /** The ratio of the greatest to the least. */
  readonly spread: Stops
  /** Mean illuminance in lux. */
  readonly mean: number
  /** The light at a point given in fractions of the original from its lower left corner. */
  stopsAt(at: Point): Stops
}

/** Computes the light on an original whose size is in metres; undefined if no light falls on it. */
export function fieldOf(
  lamps: readonly LampNumbers[],
  width: number,
  height: number,
  quick: boolean,
): Field | undefined {
  const side = quick ? QUICK : SETTLED
  const map = mapField(lamps, width, height, side, side)
  const { least, greatest, mean } = quick ? figuresOf(map, side) : evennessOf(lamps, width, height)
  if (!(mean > DARK && Number.isFinite(greatest))) return undefined
  const stops = (lux: number): number => Math.log2(lux / mean)
  const values = Array.from(map, (lux) => Math.max(DARKEST, stops(lux)))
  const dark = least <= DARK
  return {
    grid: { columns: side, rows: side, values },
    least: { stops: dark ? Number.NEGATIVE_INFINITY : stops(least), at: extremes(map, side, -1) },
    greatest: { stops: stops(greatest), at: extremes(map, side, 1) },
    spread: dark ? Number.POSITIVE_INFINITY : Math.log2(greatest / least),
    mean,
    stopsAt: (at) => stops(illuminanceAt(lamps, (at.x - 0.5) * width, (at.y - 0.5) * height)),
  }
}

function figuresOf(map: Float64Array, side: number): { least: number; greatest: number; mean: number } {
  let least = Number.POSITIVE_INFINITY
  let greatest = 0
  let sum = 0
  for (let row = 0, at = 0; row < side; row++) {
    const weight = row === 0 || row === side - 1 ? 0.5 : 1
    for (let column = 0; column < side; column++, at++) {
      const value = map[at] as number
      least = Math.min(least, value)
      greatest = Math.max(greatest, value)
      sum += value * weight * (column === 0 || column === side - 1 ? 0.5 : 1)
    }
  }
  return { least, greatest, mean: sum / (side - 1) ** 2 }
}

const MOST_ALIKE = 4

/** The points of the greatest (sign 1) or least (sign −1) sample, including equal ones elsewhere. */
function extremes(map: Float64Array, side: number, sign: 1 | -1): readonly Point[] {
  let best = map[0] as number
  for (const value of map) if ((value - best) * sign > 0) best = value
  const found: Point[] = []
  for (let at = 0; at < map.length && found.length < MOST_ALIKE; at++) {
    if (Math.abs((map[at] as number) - best) > 1e-6 * Math.abs(best)) continue
    const here = point((at % side) / (side - 1), Math.floor(at / side) / (side - 1))
    if (found.every((other) => distance(here, other) > 0.2)) found.push(here)
  }
  return found
}
