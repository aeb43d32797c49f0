import { DARK, evennessOf, type LampNumbers, pointLight } from '../lamps/light-field.ts'

/** What a symmetrical pair has to satisfy; metres, radians and stops. */
export interface PairTask {
  readonly width: number
  readonly height: number
  readonly lensHeight: number
  /** The most the field may spread, in stops. */
  readonly limit: number
  readonly beamAngle: number
  readonly lampRadius: number
  readonly glossy: boolean
  /** The width that the camera sees and that is reflected into it at a time; without it, or 0, the whole. */
  readonly seen?: number
  /** How far the camera moves off the centre towards the lamps. */
  readonly shift?: number
  /** How far the original’s edges may be tilted, in radians. */
  readonly curl?: number
  /** The highest a lamp may be above the original, in metres. */
  readonly highest?: number
  /** The farthest a lamp may be from the original’s centre. */
  readonly reach: number
  /** Places are multiples of this, in metres; without it, or 0, any place will do. */
  readonly step?: number
}

export interface Pair {
  /** The right lamp's place and aim; the left one mirrors it. */
  readonly x: number
  readonly z: number
  readonly aim_x: number
  readonly spread: number
  readonly elevation: number
  readonly met: boolean
  /** The limits that decide the place; when none is even enough, those of which lifting any one would allow a place. */
  readonly binding: string
}

const INTENSITY_CANDELA = 1000
/** Beyond this elevation a lamp would hang in the camera’s way. */
export const STEEPEST_RADIANS = (80 * Math.PI) / 180
/** A lamp stays this far above the plane of the original, or by its radius. */
const LEAST_CLEARANCE_METRES = 1e-3

const rightLamp = (x: number, z: number, aim_x: number, beam_angle: number): LampNumbers => ({
  x,
  y: 0,
  z,
  aim_x,
  aim_y: 0,
  intensity: INTENSITY_CANDELA,
  beam_angle,
})

/** The lamps of a pair, right then left. */
export const pairLamps = (x: number, z: number, aim: number, beamAngle: number): LampNumbers[] => [
  rightLamp(x, z, aim, beamAngle),
  rightLamp(-x, z, -aim, beamAngle),
]

/** The least height of a lamp’s middle above the original. */
export const lowest = (task: PairTask): number => Math.max(task.lampRadius, LEAST_CLEARANCE_METRES)

const halfSeen = ({ seen, width }: PairTask): number => (seen || width) / 2

/** How far out a lamp’s middle is at least, low beside the original. */
export const edgeOf = (task: PairTask): number => halfSeen(task) + (task.shift ?? 0) + task.lampRadius

/** How far the camera’s view narrows for each metre above the original. */
export const viewSlope = (task: PairTask): number => halfSeen(task) / task.lensHeight

/** The spread over a quarter of the field: a pair is the same in all four. */
export function quarterSpread(
  task: PairTask,
  x: number,
  z: number,
  aim: number,
  columns: number,
  rows: number,
): number {
  const light = pointLight(rightLamp(x, z, aim, task.beamAngle))
  let least = Number.POSITIVE_INFINITY
  let greatest = 0
  for (let i = 0; i <= columns; i++) {
    const px = (task.width / 2) * (i / columns)
    for (let j = 0; j <= rows; j++) {
      const py = (task.height / 2) * (j / rows)
      const value = light(px, py) + light(-px, py)
      if (value < least) least = value
      if (value > greatest) greatest = value
    }
  }
  return greatest > DARK ? Math.log2(greatest / least) : Number.POSITIVE_INFINITY
}

/** The spread of a pair over the fully sampled field. */
export const spreadOfPair = (task: PairTask, x: number, z: number, aim: number): number =>
  evennessOf(pairLamps(x, z, aim, task.beamAngle), task.width, task.height).spread

/** How far a rounded figure may pass a limit that it meets exactly. */
const ROUNDING_METRES = 1e-9

/** How far out the mirror zone reaches for each metre above the original; it goes up to the horizon where the edges are too steep. */
export function zoneSlope(task: PairTask): number {
  const reflected = Math.atan(viewSlope(task)) + 2 * Math.abs(task.curl ?? 0)
  return reflected < Math.PI / 2 ? Math.tan(reflected) : Number.POSITIVE_INFINITY
}

/** Whether a lamp may be here: out of the mirror zone and of the camera’s view, at or under 45°, clear and within reach. */
export function isAllowed(task: PairTask, x: number, z: number): boolean {
  const { lampRadius, glossy, reach, highest = Number.POSITIVE_INFINITY } = task
  return (
    x - edgeOf(task) - (glossy ? zoneSlope(task) : -viewSlope(task)) * z >= -ROUNDING_METRES &&
    z <= highest + ROUNDING_METRES &&
    x - z - lampRadius >= -ROUNDING_METRES &&
    z >= Math.max(lampRadius, LEAST_CLEARANCE_METRES) - ROUNDING_METRES &&
    Math.atan2(z, x) <= STEEPEST_RADIANS &&
    Math.hypot(x, z) <= reach + ROUNDING_METRES
  )
}
