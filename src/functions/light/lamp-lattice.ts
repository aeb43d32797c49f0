import { isAllowed, type Pair, type PairTask, quarterSpread, spreadOfPair } from './lamp-pair.ts'

/** A look at a quarter of the field in this many columns and rows; they divide the sampling of the whole field. */
const QUICK_LOOK = 4
/** Up to this many aims are all tried; of more, a part first, then those about the best. */
const ALL_AIMS = 48
/** Beyond this many rings without a passing place there is none to expect. */
const MOST_RINGS = 400

/** A multiple of a step without the last digits that multiplying adds: what one would type. */
const multiple = (count: number, step: number): number => Number((count * step).toPrecision(12))

/** How far about the nearest pair a place is looked for to the millimetre. */
const MOST_MILLIMETRES = 20
/** Lamps are set to a millimetre at best. */
export const LEAST_STEP_METRES = 1e-3

/**
 * The nearest place on a lattice that passes: x, z and aim are multiples of the step, and the spread is that of the
 * whole field with exactly those figures. Where only a few places are within reach and none is a multiple, lamps are set
 * to the millimetre. Where the pair found without a lattice does not pass, neither does this one; it is the same place,
 * rounded.
 * @param nearest the nearest pair without a lattice
 * @param step in metres
 */
export function placeOnLattice(task: PairTask, nearest: Pair, step: number): Pair {
  if (!nearest.met) return rounded(task, nearest, step)
  const start = Math.hypot(nearest.x, nearest.z) - 2 * step
  for (let ring = 0; ring < MOST_RINGS && start + ring * step <= task.reach; ring++) {
    const from = start + ring * step
    const found = passing(task, nearest, placesBetween(task, from, from + step, step), step)
    if (found) return found
  }
  const exact = passing(task, nearest, placesAbout(task, nearest), LEAST_STEP_METRES)
  return exact ?? { ...rounded(task, nearest, step), binding: 'reach' }
}

/** The first of some places that passes with an aim on the lattice. */
function passing(task: PairTask, { aim_x, binding }: Pair, places: readonly Place[], step: number): Pair | undefined {
  for (const { x, z } of places) {
    const aim = passingAim(task, x, z, aim_x, step)
    if (aim === undefined) continue
    return {
      ...{ x, z, aim_x: aim, binding, met: true },
      spread: spreadOfPair(task, x, z, aim),
      elevation: Math.atan2(z, x),
    }
  }
  return undefined
}

function rounded(task: PairTask, { x, z, aim_x, binding }: Pair, step: number): Pair {
  const near = (value: number, least = Number.NEGATIVE_INFINITY): number =>
    multiple(Math.max(least, Math.round(value / step)), step)
  // A lamp stands above the original, however low.
  const [atX, atZ, aim] = [near(x), near(z, 1), near(aim_x)]
  const spread = spreadOfPair(task, atX, atZ, aim)
  return { x: atX, z: atZ, aim_x: aim, spread, elevation: Math.atan2(atZ, atX), met: false, binding }
}

interface Place {
  readonly x: number
  readonly z: number
  readonly distance: number
}

/** The allowed places to the millimetre within two centimetres of a pair, nearest first. */
function placesAbout(task: PairTask, { x, z }: Pair): Place[] {
  const about = (middle: number): number[] =>
    counts(-MOST_MILLIMETRES, MOST_MILLIMETRES, 1).map((by) =>
      multiple(Math.round(middle / LEAST_STEP_METRES) + by, LEAST_STEP_METRES),
    )
  return about(x)
    .flatMap((out) => about(z).map((up) => ({ x: out, z: up, distance: Math.hypot(out, up) })))
    .filter((place) => isAllowed(task, place.x, place.z))
    .sort((one, other) => one.distance - other.distance)
}

/** The allowed places of the lattice whose distance is above one bound and not above another, nearest first. */
function placesBetween(task: PairTask, above: number, upTo: number, step: number): Place[] {
  const places: Place[] = []
  for (let row = 1; row * step <= upTo; row++) {
    const z = multiple(row, step)
    const first = Math.max(1, Math.floor(Math.sqrt(Math.max(0, above ** 2 - z ** 2)) / step))
    for (let column = first; ; column++) {
      const x = multiple(column, step)
      const distance = Math.hypot(x, z)
      if (distance > upTo) break
      if (distance > above && isAllowed(task, x, z)) places.push({ x, z, distance })
    }
  }
  return places.sort((one, other) => one.distance - other.distance)
}

/** The aim on the lattice that makes a place pass, nearest to a given one; undefined where none does. */
function passingAim(task: PairTask, x: number, z: number, hoped: number, step: number): number | undefined {
  const most = Math.floor(task.width / 2 / step + 1e-9)
  const quick = (count: number): number => quarterSpread(task, x, z, multiple(count, step), QUICK_LOOK, QUICK_LOOK)
  const stride = Math.max(1, Math.ceil((2 * most + 1) / ALL_AIMS))
  let tried = counts(-most, most, stride)
  if (stride > 1) {
    const best = tried.reduce((one, other) => (quick(other) < quick(one) ? other : one))
    tried = counts(Math.max(-most, best - stride), Math.min(most, best + stride), 1)
  }
  return tried
    .filter((count) => quick(count) <= task.limit)
    .map((count) => multiple(count, step))
    .sort((one, other) => Math.abs(one - hoped) - Math.abs(other - hoped))
    .find((aim) => spreadOfPair(task, x, z, aim) <= task.limit)
}

const counts = (from: number, to: number, stride: number): number[] =>
  Array.from({ length: Math.floor((to - from) / stride) + 1 }, (_, i) => from + i * stride)
