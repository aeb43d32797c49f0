import type { SetUpInputs } from '../canvas/drawing-unit.ts'
import { numberIn } from '../plots/given-values.ts'

/** How an upright original stands. */
export interface UprightPlacement {
  /** How far its upper edge leans away from the camera. */
  readonly lean: number
  /** Of its middle, above the floor. */
  readonly centre: number | undefined
}

const MOST_LEAN = (75 * Math.PI) / 180
const HIGHEST = 100

export function readUprightPlacement(inputs: SetUpInputs, omissions: string[]): UprightPlacement {
  const given = inputs.lean === undefined ? 0 : numberIn(inputs.lean)
  const leans = given !== undefined && Math.abs(given) <= MOST_LEAN
  if (!leans) omissions.push('The lean is not drawn: it is no angle within 75° of upright.')
  const height = numberIn(inputs.centre_height)
  const stands = height !== undefined && height > 0 && height <= HIGHEST
  if (inputs.centre_height === undefined)
    omissions.push('The floor is not drawn: the height of the original’s centre is not known.')
  else if (!stands)
    omissions.push('The floor is not drawn: the height of the original’s centre is no length above zero.')
  return { lean: leans ? given : 0, centre: stands ? height : undefined }
}
