import { bisect } from '../../units/index.ts'
import { type LampNumbers, pointLight, sampleField, spreadOf } from '../lamps/light-field.ts'

/** A place in a rectangle, in metres from its centre; infinite on an edge, wherever that is. */
type Place = readonly [x: number, y: number]

const SIDES = [Number.NEGATIVE_INFINITY, 0, Number.POSITIVE_INFINITY]

/** Corners, middles of the sides and centre: among the samples of every field. */
const NINE = SIDES.flatMap((x) => SIDES.map((y): Place => [x, y]))

/** The coordinate of one of so many samples along a side. */
function coordinate(sample: number, samples: number, side: number): number {
  if (sample === 0) return Number.NEGATIVE_INFINITY
  if (sample === samples - 1) return Number.POSITIVE_INFINITY
  return side * (sample / (samples - 1) - 0.5)
}

/** Metres from the centre of a rectangle of half a side; not a number where it ends before the place. */
const metres = (at: number, half: number): number =>
  Number.isFinite(at) ? (Math.abs(at) > half ? Number.NaN : at) : Math.sign(at) * half

/** How often the places looked at may grow before whole fields are sampled instead. */
const MOST_ROUNDS = 12

/**
 * The width of the largest rectangle of `ratio` = width/height, centred on the origin, even within `limit` stops. A
 * rectangle contains every smaller one, so its spread is never less: where a few of its places differ too much, so do all
 * larger ones. The few places that decide are found by sampling the field of the width they allow.
 */
export function evenWidth(lamps: readonly LampNumbers[], limit: number, ratio: number): number {
  const lights = lamps.map(pointLight)
  const places = [...NINE]
  const maybe = (width: number): boolean => {
    let [least, greatest] = [Number.POSITIVE_INFINITY, 0]
    for (const place of places) {
      const [x, y] = [metres(place[0], width / 2), metres(place[1], width / ratio / 2)]
      let sum = 0
      for (const light of lights) sum += light(x, y)
      // A comparison with what is not a number is false, so that a place outside counts for neither.
      if (sum < least) least = sum
      if (sum > greatest) greatest = sum
    }
    return spreadOf(least, greatest) <= limit
  }
  const within = (width: number): boolean => {
    const { columns, rows, field, least, greatest } = sampleField(lamps, width, width / ratio)
    if (spreadOf(field[least] as number, field[greatest] as number) <= limit) return true
    for (const at of [least, greatest])
      places.push([coordinate(at % columns, columns, width), coordinate(Math.floor(at / columns), rows, width / ratio)])
    return false
  }
  const largest = (passes: (width: number) => boolean): number => {
    let high = 1e-3
    while (high < 1e4 && passes(high)) high *= 2
    if (high >= 1e4) return high
    const low = high === 1e-3 ? 0 : high / 2
    return bisect(passes, { passing: low, failing: high }, { tolerance: ({ failing }) => 1e-7 * failing }).passing
  }
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const width = largest(maybe)
    if (within(width)) return width
  }
  return largest((width) => maybe(width) && within(width))
}
