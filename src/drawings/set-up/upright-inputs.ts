import type { Metres, Radians } from '../canvas/measures.ts'
import { numberIn } from '../plots/given-values.ts'
import type { SetUp, SetUpInputs } from './set-up-inputs.ts'
import { type Plane, UPRIGHT_WORDS } from './upright/words.ts'

/** The pose of an upright original. */
export interface UprightPlacement {
  /** Angle by which its upper edge leans away from the camera. */
  readonly lean: Radians
  /** Height of its centre above the floor, if known. */
  readonly centre: Metres | undefined
}

const MOST_LEAN: Radians = (75 * Math.PI) / 180
const HIGHEST: Metres = 100
/** Smaller angles cannot be seen in a drawing. */
const VISIBLE_LEAN: Radians = 1e-3

/** Whether an original leans so little, in radians, that it is drawn upright. */
export const isVertical = (lean: Radians): boolean => Math.abs(lean) < VISIBLE_LEAN

/** The size of a lean in degrees, to a tenth. */
export const leanDegrees = (lean: Radians): number => Number(((Math.abs(lean) * 180) / Math.PI).toFixed(1))

/** What the distances are from: a plane beyond the original, such as a backdrop, is given by its field alone. */
export const planeOf = ({ originalWidth, fieldWidth }: SetUp): Plane =>
  originalWidth === undefined && fieldWidth !== undefined ? 'field' : 'original'

/** How an original on an easel leans, in radians, and how high its centre is, in metres; what is missing joins the omissions. */
export function readUprightPlacement(inputs: SetUpInputs, omissions: string[]): UprightPlacement {
  const lean = inputs.lean === undefined ? 0 : numberIn(inputs.lean)
  const leanUsable = lean !== undefined && Math.abs(lean) <= MOST_LEAN
  if (!leanUsable) omissions.push(UPRIGHT_WORDS.leanOutOfRange)
  const centre = numberIn(inputs.centre_height)
  const centreUsable = centre !== undefined && centre > 0 && centre <= HIGHEST
  if (inputs.centre_height === undefined) omissions.push(UPRIGHT_WORDS.floorNeedsCentre)
  else if (!centreUsable) omissions.push(UPRIGHT_WORDS.floorAtZero)
  return { lean: leanUsable ? lean : 0, centre: centreUsable ? centre : undefined }
}
