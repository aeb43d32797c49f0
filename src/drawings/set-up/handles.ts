import type { Lamp } from '../canvas/drawing-unit.ts'
import { type Point, point } from '../canvas/geometry.ts'
import type { Handle } from '../canvas/tree.ts'
import type { Frame } from './frame.ts'
import { lampsSeen } from './lamp-choice.ts'

/** How a view places lamps: the coordinate it hides, and the way from space to paper and back. */
export interface LampView {
  readonly view: string
  readonly hidden: 'x' | 'y' | 'z'
  readonly pxPerMetre: number
  readonly at: (lamp: Lamp) => Point
  readonly place: Handle['place']
  readonly describe: (lamp: Lamp) => string
}

/** A handle for every lamp the view shows. */
export const lampHandles = (lamps: readonly Lamp[], seen: LampView): readonly Handle[] =>
  lampsSeen(lamps, seen.hidden).map((lamp) => ({
    lamp: lamp.number,
    view: seen.view,
    at: seen.at(lamp),
    pxPerMetre: seen.pxPerMetre,
    place: seen.place,
    description: seen.describe(lamp),
  }))

const aside = (x: number, show: (metres: number) => string): string =>
  Math.abs(x) < 5e-4 ? 'on the centre line' : `${show(Math.abs(x))} ${x < 0 ? 'left' : 'right'} of the centre line`

/** Seen from the front of a copy stand, or from above a wall: across and out from the original. */
export const frontHandles = ({ origin, pxPerMetre, show }: Frame, view = 'elevation'): LampView => ({
  view,
  hidden: 'y',
  pxPerMetre,
  at: ({ x, z }) => point(origin.x + x * pxPerMetre, origin.y - z * pxPerMetre),
  place: (at) => ({ x: (at.x - origin.x) / pxPerMetre, z: (origin.y - at.y) / pxPerMetre }),
  describe: ({ x, z }) => `${aside(x, show)}, ${show(z)} ${view === 'elevation' ? 'above' : 'out from'} the original`,
})

/** Seen from the camera: across and up the original. */
export const planHandles = ({ origin, pxPerMetre, show }: Frame): LampView => ({
  view: 'plan',
  hidden: 'z',
  pxPerMetre,
  at: ({ x, y }) => point(origin.x + x * pxPerMetre, origin.y - y * pxPerMetre),
  place: (at) => ({ x: (at.x - origin.x) / pxPerMetre, y: (origin.y - at.y) / pxPerMetre }),
  describe: ({ x, y }) =>
    `${aside(x, show)}, ${Math.abs(y) < 5e-4 ? 'level with the middle' : `${show(Math.abs(y))} ${y < 0 ? 'below' : 'above'} the middle`}`,
})
