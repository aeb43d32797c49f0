import { bisect } from '../../units/index.ts'
import { placeOnLattice } from './lamp-lattice.ts'
import {
  edgeOf,
  lowest,
  type Pair,
  type PairTask,
  quarterSpread,
  STEEPEST_RADIANS,
  spreadOfPair,
  viewSlope,
  zoneSlope,
} from './lamp-pair.ts'

interface Place {
  readonly distance: number
  readonly elevation: number
  readonly aim: number
  readonly spread: number
}

/** Limits that can be lifted one at a time to find which of them prevents a place. */
interface Lifted {
  readonly mirror?: boolean
  readonly elevation?: boolean
}

const RINGS = 32
/** Metres out for each metre up, farther than any lamp is put. */
const LOW_SUN = 1e3

/**
 * The nearest symmetrical pair (least distance from the centre) that is even enough, outside the mirror zone, at or
 * under 45° and out of the camera's view. Deterministic: rings of growing distance, on each the best elevation and aim,
 * then bisection between the last ring that fails and the first that passes.
 */
export function placePair(task: PairTask): Pair {
  const key = JSON.stringify(Object.entries(task).map(([name, value]) => [name, String(value)]))
  const known = placed.get(key)
  if (known) return known
  const nearest = nearestPair(task)
  const pair = task.step ? placeOnLattice(task, nearest, task.step) : nearest
  placed.set(key, pair)
  for (const oldest of placed.keys()) {
    if (placed.size <= MOST_PLACED) break
    placed.delete(oldest)
  }
  return pair
}

/** Pairs computed last: suggestions try a sheet hundreds of times, mostly with the same light. */
const placed = new Map<string, Pair>()
const MOST_PLACED = 200

function nearestPair(task: PairTask): Pair {
  const start = Math.max(edgeOf(task), 1e-3)
  const first = firstRing(task, start, task.reach, {})
  if (first.served) return described(task, settle(task, first.before, first.served), true)
  if (first.best) return described(task, zoom(task, first.best, {}), false)
  // Nothing is allowed within reach: show the nearest that would be, low beside the original.
  const z = lowest(task)
  const slope = task.glossy ? Math.min(zoneSlope(task), LOW_SUN) : -viewSlope(task)
  const x = Math.max(z + task.lampRadius, edgeOf(task) + slope * z)
  const elevation = Math.atan2(z, x)
  return described(
    task,
    gridBest(task, Math.hypot(x, z), elevation, elevation, 0, ...aims(task), 12, 8, 8),
    false,
    'reach',
  )
}

const aims = (task: PairTask): [number, number] => [-task.width / 2, task.width / 2]

interface Scan {
  /** The best place of the first ring that is even enough. */
  readonly served?: Place
  /** The distance of the ring before it. */
  readonly before: number
  /** The most even place met on the way. */
  readonly best?: Place
}

function firstRing(task: PairTask, from: number, to: number, lifted: Lifted): Scan {
  let best: Place | undefined
  let before = from
  if (to < from) return { before }
  const ratio = (to / from) ** (1 / RINGS)
  for (let ring = 0; ring <= RINGS; ring++) {
    const distance = ring === RINGS ? to : from * ratio ** ring
    const found = bestOnRing(task, distance, lifted)
    if (found && found.spread <= task.limit) return { served: found, before, ...(best ? { best } : {}) }
    if (found && !(best && best.spread <= found.spread)) best = found
    // A coarse search may miss the most even aim by a little, so a near miss is refined before the next ring.
    if (found && found.spread <= 1.3 * task.limit) {
      const near = zoom(task, found, lifted)
      if (near.spread <= task.limit) return { served: near, before, best: near }
      if (near.spread < (best as Place).spread) best = near
    }
    before = distance
  }
  return best ? { before, best } : { before }
}

/** The elevations at which a lamp at this distance is allowed. All limits are straight lines in (X, z), so: one interval. */
function allowed(task: PairTask, distance: number, lifted: Lifted): { low: number; high: number } | undefined {
  const { lampRadius: r, glossy, highest = Number.POSITIVE_INFINITY } = task
  const slope = viewSlope(task)
  const turn = Math.atan(slope)
  const clear = edgeOf(task) / (distance * Math.hypot(1, slope))
  const sine = lowest(task) / distance
  if (clear > 1 || sine > 1) return undefined
  let low = Math.max(Math.asin(sine), turn - Math.acos(clear))
  let high = Math.min(STEEPEST_RADIANS, turn + Math.acos(clear))
  if (!lifted.elevation) {
    const lean = r / (distance * Math.SQRT2)
    if (lean > 1) return undefined
    high = Math.min(high, Math.PI / 4 - Math.asin(lean))
  }
  if (distance > highest) high = Math.min(high, Math.asin(highest / distance))
  if (glossy && !lifted.mirror) {
    const zone = zoneSlope(task)
    const beyond = edgeOf(task) / (distance * Math.hypot(1, zone))
    if (zone === Number.POSITIVE_INFINITY || beyond > 1) return undefined
    high = Math.min(high, Math.acos(beyond) - Math.atan(zone))
  }
  if (low > high) {
    // Rounding may part two limits that meet exactly.
    if (low - high > 1e-9) return undefined
    low = high
  }
  return { low, high }
}

function bestOnRing(task: PairTask, distance: number, lifted: Lifted): Place | undefined {
  const range = allowed(task, distance, lifted)
  if (!range) return undefined
  return gridBest(task, distance, range.low, range.high, 8, -task.width / 2, task.width / 2, 6, 4, 3)
}

/** Closes in on the best elevation and aim at the distance of a place. */
function zoom(task: PairTask, place: Place, lifted: Lifted, samples = 8): Place {
  const range = allowed(task, place.distance, lifted)
  if (!range) return place
  let best = place
  let spanElevation = (range.high - range.low) / 8
  let spanAim = task.width / 8
  for (let level = 0; level < 9; level++) {
    const found = gridBest(
      task,
      place.distance,
      Math.max(range.low, best.elevation - spanElevation),
      Math.min(range.high, best.elevation + spanElevation),
      4,
      Math.max(-task.width / 2, best.aim - spanAim),
      Math.min(task.width / 2, best.aim + spanAim),
      4,
      samples,
      samples,
    )
    // While the best place still moves, the span stays; then it shrinks.
    const moved = Math.max(
      Math.abs(found.elevation - best.elevation) / spanElevation,
      Math.abs(found.aim - best.aim) / spanAim,
    )
    if (level === 0 || found.spread < best.spread) best = found
    if (level === 0 || moved < 0.75) {
      spanElevation *= 0.45
      spanAim *= 0.45
    }
  }
  return best
}

function gridBest(
  task: PairTask,
  distance: number,
  low: number,
  high: number,
  steps: number,
  aimLow: number,
  aimHigh: number,
  aimSteps: number,
  columns: number,
  rows: number,
): Place {
  let best: Place | undefined
  for (let i = 0; i <= steps; i++) {
    const elevation = steps === 0 ? low : low + ((high - low) * i) / steps
    const x = distance * Math.cos(elevation)
    const z = distance * Math.sin(elevation)
    for (let k = 0; k <= aimSteps; k++) {
      const aim = aimLow + ((aimHigh - aimLow) * k) / aimSteps
      const spread = quarterSpread(task, x, z, aim, columns, rows)
      if (!best || spread < best.spread) best = { distance, elevation, aim, spread }
    }
  }
  return best as Place
}

/** Bisects between a ring that fails and one that passes, then checks the fully sampled field. */
function settle(task: PairTask, before: number, served: Place): Place {
  let best = served
  const evenEnough = (distance: number): boolean => {
    const found = allowed(task, distance, {}) ? zoom(task, { ...best, distance }, {}, 16) : undefined
    if (!found || found.spread > task.limit) return false
    best = found
    return true
  }
  bisect(
    evenEnough,
    { failing: before, passing: served.distance },
    { halvings: 12, tolerance: ({ passing }) => 1e-5 * passing },
  )
  for (let i = 0; i < 40; i++) {
    const spread = fullSpread(task, best)
    if (spread <= task.limit) return { ...best, spread }
    const farther = { ...best, distance: Math.min(task.reach, best.distance * 1.0005) }
    if (farther.distance === best.distance) break
    best = zoom(task, farther, {}, 16)
  }
  return best
}

const fullSpread = (task: PairTask, { distance, elevation, aim }: Place): number =>
  spreadOfPair(task, distance * Math.cos(elevation), distance * Math.sin(elevation), aim)

function described(task: PairTask, place: Place, met: boolean, binding?: string): Pair {
  const spread = fullSpread(task, place)
  return {
    x: place.distance * Math.cos(place.elevation),
    z: place.distance * Math.sin(place.elevation),
    aim_x: place.aim,
    spread,
    elevation: place.elevation,
    met: met && spread <= task.limit,
    binding: binding ?? (met ? heldBy(task, place, spread) : inTheWay(task)),
  }
}

function heldBy(task: PairTask, { distance, elevation }: Place, spread: number): string {
  const x = distance * Math.cos(elevation)
  const z = distance * Math.sin(elevation)
  const near = 1e-3 * distance
  const edge = edgeOf(task)
  const { highest = Number.POSITIVE_INFINITY } = task
  const limits = [
    ...(spread > 0.99 * task.limit ? ['evenness'] : []),
    ...(task.glossy && x - edge - zoneSlope(task) * z < near ? ['mirror zone'] : []),
    ...(x - z - task.lampRadius < near ? ['elevation'] : []),
    ...(!task.glossy && x - edge + viewSlope(task) * z < near ? ['view'] : []),
    ...(highest - z < near ? ['height'] : []),
    ...(z - task.lampRadius < near ? ['lamp radius'] : []),
  ]
  return limits.join(' and ')
}

function inTheWay(task: PairTask): string {
  const start = Math.max(edgeOf(task), 1e-3)
  const limits = [
    ...(task.glossy && firstRing(task, start, task.reach, { mirror: true }).served ? ['mirror zone'] : []),
    ...(firstRing(task, start, task.reach, { elevation: true }).served ? ['elevation'] : []),
    ...(firstRing(task, task.reach, 4 * task.reach, {}).served ? ['reach'] : []),
    ...(task.highest !== undefined && firstRing({ ...task, highest: task.reach }, start, task.reach, {}).served
      ? ['height']
      : []),
  ]
  return limits.length > 0 ? limits.join(' or ') : 'evenness'
}
