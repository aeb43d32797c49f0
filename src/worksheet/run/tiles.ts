import { fitMagnification } from '../../functions/camera/fit.ts'
import { planTiles, type TilePlan } from '../../functions/camera/tile-plan.ts'

/** What decides in how many frames an original is taken; lengths in m. */
export interface Face {
  readonly width: number
  readonly height: number
  readonly border: number
  /** Least overlap of frames; where nothing is said of it nothing is taken in parts. */
  readonly overlap: number | undefined
  readonly turn: boolean
}

export interface Sensor {
  readonly width: number
  readonly height: number
}

const ROUNDING = 1e-9
const WHOLE: TilePlan = { across: 1, down: 1, count: 1, turned: false }

/** The frames at a magnification; undefined where the overlap leaves a frame nothing to get on by. */
export function framesAt(face: Face, sensor: Sensor, magnification: number): TilePlan | undefined {
  const { width, height, border, overlap, turn } = face
  const fits = (may: boolean): boolean =>
    magnification <= fitMagnification(width, height, sensor.width, sensor.height, border, may) * (1 + ROUNDING)
  if (fits(false)) return WHOLE
  if (turn && fits(true)) return { ...WHOLE, turned: true }
  const across = sensor.width / magnification
  const down = sensor.height / magnification
  if (overlap === undefined || overlap >= Math.min(across, down)) return undefined
  return planTiles(width + 2 * border, height + 2 * border, across, down, overlap, turn)
}

/** The greatest magnification that takes at most the given number of frames. */
export function greatestMagnification(count: number, face: Face, sensor: Sensor): number {
  const { width, height, border, overlap, turn } = face
  const w = width + 2 * border
  const h = height + 2 * border
  if (count === 1 || overlap === undefined)
    return fitMagnification(width, height, sensor.width, sensor.height, border, turn)
  const at = (across: number, down: number): number => {
    // n frames with n − 1 overlaps between reach the whole way.
    const wide = (w - overlap) / across + overlap
    const high = (h - overlap) / down + overlap
    const asItLies = Math.min(sensor.width / wide, sensor.height / high)
    return turn ? Math.max(asItLies, Math.min(sensor.height / wide, sensor.width / high)) : asItLies
  }
  // Past this a frame is no longer than the overlap.
  const end = overlap > 0 ? (Math.min(sensor.width, sensor.height) / overlap) * (1 - 1e-6) : Number.POSITIVE_INFINITY
  let most = 0
  // Beyond the square root more rows mean fewer columns: only the shorter side is searched.
  for (let few = 1; few * few <= count; few++) {
    const many = Math.floor(count / few)
    most = Math.max(most, at(few, many), at(many, few))
  }
  return Math.min(most, end)
}
