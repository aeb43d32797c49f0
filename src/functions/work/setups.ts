import { fitMagnification } from '../camera/fit.ts'

/** The magnifications one original allows. */
export interface Allowed {
  /** From the required sampling. */
  readonly least: number
  /** From the size of the original on the sensor. */
  readonly most: number
  /** Originals of different exposure classes share no set-up. */
  readonly exposureClass: number
}

export interface Setup {
  readonly magnification: number
  readonly exposureClass: number
  /** The places in the list of the originals it takes, in ascending order of their upper limit. */
  readonly originals: readonly number[]
}

export interface Setups {
  readonly setups: readonly Setup[]
  /** Places of the originals that no single frame can take: their least is over their most. */
  readonly unfit: readonly number[]
}

/** Two limits this near, in parts of their size, are one: a required sampling that fits exactly must still fit. */
const ROUNDING = 1e-9

/**
 * The fewest set-ups that take every original: within a class, in ascending order of the upper limit, set up at the
 * first original's upper limit, take all whose lower limit is at or below it, and continue with the next left over.
 *
 * Fewest, because each original that opens a set-up is wholly above the one that opened the set-up before, so no two
 * of these share a magnification and any plan needs at least as many.
 */
export function fewestSetups(originals: readonly Allowed[]): Setups {
  const unfit: number[] = []
  const byClass = new Map<number, number[]>()
  originals.forEach(({ least, most, exposureClass }, i) => {
    if (least > most * (1 + ROUNDING)) unfit.push(i)
    else {
      const members = byClass.get(exposureClass)
      if (members) members.push(i)
      else byClass.set(exposureClass, [i])
    }
  })
  const setups: Setup[] = []
  const at = (i: number): Allowed => originals[i] as Allowed
  for (const [exposureClass, members] of byClass) {
    members.sort((i, j) => at(i).most - at(j).most || i - j)
    let magnification = Number.NEGATIVE_INFINITY
    let served: number[] = []
    for (const i of members) {
      if (served.length > 0 && at(i).least <= magnification * (1 + ROUNDING)) served.push(i)
      else {
        magnification = at(i).most
        served = [i]
        setups.push({ magnification, exposureClass, originals: served })
      }
    }
  }
  return { setups, unfit }
}

export interface Camera {
  readonly sensorWidth: number
  readonly sensorHeight: number
  /** Length per pixel. */
  readonly pixelPitch: number
  readonly border: number
  readonly turn: boolean
}

/** The magnifications one original allows: from required sampling × pitch to the fit. Lengths in m, sampling in px/m. */
export const allowedFor = (
  width: number,
  height: number,
  sampling: number,
  exposureClass: number,
  { sensorWidth, sensorHeight, pixelPitch, border, turn }: Camera,
): Allowed => ({
  least: sampling * pixelPitch,
  most: fitMagnification(width, height, sensorWidth, sensorHeight, border, turn),
  exposureClass,
})
