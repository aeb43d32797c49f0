import type { SetUp } from '../canvas/drawing-unit.ts'
import { lampsOverCentre, sameLength } from './lamp-choice.ts'

/** Heights of upright dimensions, by the side of the drawing they stand on, the innermost first. */
export function uprightDimensions(setUp: SetUp, withSensor: boolean): Uprights {
  const { clear, lens, sensor, column, thickness } = setUp
  const upright = (
    className: string,
    height: number | undefined,
    long: string,
    short: string,
    from = 0,
  ): readonly Upright[] => (height === undefined ? [] : [{ className, from, to: from + height, long, short }])
  // Where the column is marked at the sensor's level, one figure says both.
  const same = column !== undefined && sensor !== undefined && sameLength(column - thickness, sensor) && thickness === 0
  const byHeight = (a: Upright, b: Upright) => a.to - b.to
  return {
    left: [
      ...upright('dimension-sensor', withSensor && !same ? sensor : undefined, 'original to sensor', 'sensor'),
      ...upright('dimension-column', column, same ? 'column, sensor' : 'column', 'column', -thickness),
      ...lampsOverCentre(setUp.lamps).map((lamp) => ({
        className: `dimension-height-${lamp.number}`,
        from: 0,
        to: lamp.z,
        long: 'lamp above original',
        short: 'lamp',
        half: 18,
      })),
    ].sort(byHeight),
    right: [
      ...upright('dimension-clear', clear, 'clear distance', 'clear'),
      ...upright('dimension-lens', lens, 'lens to original', 'lens'),
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
  /** Half the width of what its upper end is measured at, where that is not the camera. */
  readonly half?: number
}
