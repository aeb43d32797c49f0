import { lampsOverCentre, sameLength } from './lamp-choice.ts'
import type { SetUp } from './set-up-inputs.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

/** The vertical dimensions at both sides of the drawing, innermost first. Heights are in metres. */
export function uprightDimensions(setUp: SetUp, withSensor: boolean): Uprights {
  const { clear, lens, sensor, column, thickness } = setUp
  const upright = (
    className: string,
    height: number | undefined,
    long: string,
    short: string,
    from = 0,
  ): readonly Upright[] => (height === undefined ? [] : [{ className, from, to: from + height, long, short }])
  // If the column is marked at the sensor's level, one dimension gives both heights.
  const same = column !== undefined && sensor !== undefined && sameLength(column - thickness, sensor) && thickness === 0
  const byHeight = (a: Upright, b: Upright) => a.to - b.to
  return {
    left: [
      ...upright('dimension-sensor', withSensor && !same ? sensor : undefined, WORDS.sensorLong, WORDS.sensorShort),
      ...upright(
        'dimension-column',
        column,
        same ? WORDS.columnAtSensor : WORDS.columnLabel,
        WORDS.columnLabel,
        -thickness,
      ),
      ...lampsOverCentre(setUp.lamps).map((lamp) => ({
        className: `dimension-height-${lamp.number}`,
        from: 0,
        to: lamp.z,
        long: WORDS.lampLong,
        short: WORDS.lampShort,
        half: 18,
      })),
    ].sort(byHeight),
    right: [
      ...upright('dimension-clear', clear, WORDS.clearLong, WORDS.clearShort),
      ...upright('dimension-lens', lens, WORDS.lensLong, WORDS.lensShort),
    ].sort(byHeight),
  }
}

export interface Uprights {
  readonly left: readonly Upright[]
  readonly right: readonly Upright[]
}

export interface Upright {
  readonly className: string
  readonly from: number
  readonly to: number
  readonly long: string
  readonly short: string
  /** Half the width in pixels of the part at its upper end, if that is not the camera. */
  readonly half?: number
}
