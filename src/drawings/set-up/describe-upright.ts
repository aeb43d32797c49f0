import { listText, plural } from '../../units/plural.ts'
import { capital } from '../canvas/text-figures.ts'
import {
  aimOf,
  beamOf,
  besideCentre,
  cameraDistances,
  elevationOf,
  pairAim,
  type Show,
  sizeText,
} from './describe-set-up.ts'
import { isPair } from './lamp-choice.ts'
import type { Lamp, SetUp } from './set-up-inputs.ts'
import { frontOf, sideways } from './side-view.ts'
import { type Plane, UPRIGHT_WORDS } from './upright/words.ts'
import { isVertical, leanDegrees, planeOf, type UprightPlacement } from './upright-inputs.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

/** The description of an upright set-up: every figure of the drawing in sentences. */
export function describeUpright(setUp: SetUp, placement: UprightPlacement, show: Show, scale: string): string {
  const { originalWidth, originalHeight, fieldWidth, fieldHeight, mirror, lamps } = setUp
  const { lean, centre } = placement
  const degrees = leanDegrees(lean)
  const vertical = isVertical(lean)
  const front = frontOf(setUp)
  const lens = front === undefined ? undefined : sideways(0, front, lean)
  const distances = cameraDistances(setUp, show)
  const plane = planeOf(setUp)
  const size = originalWidth === undefined ? undefined : sizeText(originalWidth, originalHeight, show)
  const sentences = [
    UPRIGHT_WORDS.uprightIntroduction(scale),
    UPRIGHT_WORDS.uprightPlane(
      plane,
      size,
      vertical ? UPRIGHT_WORDS.isUpright : UPRIGHT_WORDS.leans(degrees, lean > 0),
      centre === undefined ? undefined : show(centre),
    ),
  ]
  if (fieldWidth !== undefined) sentences.push(WORDS.fieldSize(sizeText(fieldWidth, fieldHeight, show)))
  if (lens !== undefined)
    sentences.push(
      UPRIGHT_WORDS.lensPosition(
        plane,
        centre === undefined ? undefined : show(centre + lens.up),
        show(lens.out),
        vertical ? UPRIGHT_WORDS.axisLevel : UPRIGHT_WORDS.axisTilted(degrees, lean > 0),
      ),
    )
  if (distances.length > 0)
    sentences.push(UPRIGHT_WORDS.distancesOut(plane, capital(listText(distances)), distances.length))
  sentences.push(...describeLamps(lamps, placement, plane, show))
  if (mirror) sentences.push(UPRIGHT_WORDS.mirrorReachOut(show(mirror.height), show(mirror.atHeight)))
  if (distances.length > 0 || lamps.length > 0) sentences.push(UPRIGHT_WORDS.uprightNotToSize)
  return sentences.join(' ')
}

function describeLamps(
  lamps: readonly Lamp[],
  { lean, centre }: UprightPlacement,
  plane: Plane,
  show: Show,
): readonly string[] {
  const height = ({ y, z }: Lamp): string =>
    centre === undefined ? '' : `, ${UPRIGHT_WORDS.aboveFloor(show(centre + sideways(y, z, lean).up))}`
  const out = ({ z }: Lamp): string => UPRIGHT_WORDS.outFrom(plane, show(z))
  const [first, second] = lamps
  if (!first) return []
  if (isPair(lamps) && second) {
    const right = first.x > 0 ? first : second
    const aim = pairAim(right, show) + beamOf(right)
    return [UPRIGHT_WORDS.uprightPair(show(right.x), out(right), height(right), elevationOf(right), aim)]
  }
  const each = lamps.map((lamp) =>
    UPRIGHT_WORDS.uprightLamp(
      WORDS.lampName(lamp.number, lamps.length),
      besideCentre(lamp.x, show),
      out(lamp),
      height(lamp),
      elevationOf(lamp),
      aimOf(lamp, show) + beamOf(lamp),
    ),
  )
  return lamps.length === 1 ? each : [`${capital(plural(lamps.length, 'lamp'))}.`, ...each]
}
