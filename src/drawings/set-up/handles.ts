import { type Point, point } from '../canvas/geometry.ts'
import type { Handle } from '../canvas/tree.ts'
import { besideCentre } from './describe-set-up.ts'
import type { Frame } from './frame.ts'
import { isZero, lampsSeen } from './lamp-choice.ts'
import type { Lamp } from './set-up-inputs.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

/** How a view shows lamps: the coordinate it hides, and the mapping between space and canvas. */
export interface LampView {
  readonly view: string
  readonly hidden: 'x' | 'y' | 'z'
  readonly pxPerMetre: number
  readonly at: (lamp: Lamp) => Point
  readonly place: Handle['place']
  readonly describe: (lamp: Lamp) => string
}

/** One drag handle for each lamp the view shows. */
export const lampHandles = (lamps: readonly Lamp[], seen: LampView): readonly Handle[] =>
  lampsSeen(lamps, seen.hidden).map((lamp) => ({
    lamp: lamp.number,
    view: seen.view,
    at: seen.at(lamp),
    pxPerMetre: seen.pxPerMetre,
    place: seen.place,
    description: seen.describe(lamp),
  }))

/** The view from the front of a copy stand, or from above a wall: x across, z out from the original. */
export const frontHandles = (
  { origin, pxPerMetre, show }: Frame,
  view = 'elevation',
  away: (distance: string) => string = WORDS.aboveOriginal,
): LampView => ({
  view,
  hidden: 'y',
  pxPerMetre,
  at: ({ x, z }) => point(origin.x + x * pxPerMetre, origin.y - z * pxPerMetre),
  place: (at) => ({ x: (at.x - origin.x) / pxPerMetre, z: (origin.y - at.y) / pxPerMetre }),
  describe: ({ x, z }) => `${besideCentre(x, show)}, ${away(show(z))}`,
})

/** The view from the camera: x across, y up the original. */
export const planHandles = ({ origin, pxPerMetre, show }: Frame): LampView => ({
  view: 'plan',
  hidden: 'z',
  pxPerMetre,
  at: ({ x, y }) => point(origin.x + x * pxPerMetre, origin.y - y * pxPerMetre),
  place: (at) => ({ x: (at.x - origin.x) / pxPerMetre, y: (origin.y - at.y) / pxPerMetre }),
  describe: ({ x, y }) =>
    `${besideCentre(x, show)}, ${isZero(y) ? WORDS.levelWithMiddle : WORDS.fromMiddle(show(Math.abs(y)), y > 0)}`,
})
