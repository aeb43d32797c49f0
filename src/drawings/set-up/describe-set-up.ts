import { listText, plural } from '../../units/plural.ts'
import { capital, figureText } from '../canvas/text-figures.ts'
import { CANVAS_WORDS as SHARED } from '../canvas/words.ts'
import { isPair, isZero } from './lamp-choice.ts'
import type { Lamp, SetUp } from './set-up-inputs.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

/** Formats a length in metres with its unit. */
export type Show = (metres: number) => string

/** The description of a copy stand: every figure of the drawing in sentences. */
export function describeSetUp(setUp: SetUp, show: Show, scale: string): string {
  const { originalWidth, originalHeight, fieldWidth, fieldHeight, column, mirror, lamps } = setUp
  const sentences = [WORDS.introduction(scale)]
  if (originalWidth !== undefined) sentences.push(WORDS.originalSize(sizeText(originalWidth, originalHeight, show)))
  if (fieldWidth !== undefined) sentences.push(WORDS.fieldSize(sizeText(fieldWidth, fieldHeight, show)))
  const distances = cameraDistances(setUp, show)
  if (distances.length > 0) sentences.push(WORDS.heights(capital(listText(distances)), distances.length))
  if (column !== undefined) sentences.push(WORDS.columnHeight(show(column)))
  sentences.push(...describeLamps(lamps, show))
  if (mirror) sentences.push(WORDS.mirrorReach(show(mirror.height), show(mirror.atHeight), clearance(setUp, show)))
  if (distances.length > 0 || lamps.length > 0) sentences.push(WORDS.notToSize)
  return sentences.join(' ')
}

/** `420 × 297 mm`, or the width alone while the height is unknown. */
export const sizeText = (width: number, height: number | undefined, show: Show): string =>
  height === undefined ? WORDS.wide(show(width)) : SHARED.times(show(width).replace(/ \D+$/, ''), show(height))

/** The known distances of sensor, lens and front rim from the original. */
export const cameraDistances = ({ sensor, lens, clear }: SetUp, show: Show): readonly string[] => [
  ...(sensor === undefined ? [] : [WORDS.sensorHeight(show(sensor))]),
  ...(lens === undefined ? [] : [WORDS.lensHeight(show(lens))]),
  ...(clear === undefined ? [] : [WORDS.rimHeight(show(clear))]),
]

/** Half the width of the mirror zone at a height above the original, in metres. */
const zoneAt = (setUp: SetUp, z: number): number => {
  const mirror = setUp.mirror as NonNullable<SetUp['mirror']>
  return mirror.atOriginal + ((mirror.atHeight - mirror.atOriginal) * z) / mirror.height
}

function clearance(setUp: SetUp, show: Show): string {
  const { lamps } = setUp
  const gaps = lamps.map((lamp) => Math.abs(lamp.x) - zoneAt(setUp, lamp.z))
  const least = Math.min(...gaps)
  if (least > 0) return WORDS.clearsZone(show(least), lamps.length)
  const inside = lamps.filter((_, at) => (gaps[at] as number) <= 0).map((lamp) => String(lamp.number))
  if (lamps.length === 1) return WORDS.lampInZone
  return inside.length === lamps.length ? WORDS.lampsInZone : WORDS.someLampsInZone(listText(inside), inside.length)
}

/** The angle of a lamp above the plane of the original, seen from its centre. */
export const elevationOf = (lamp: Lamp): string =>
  `${Math.round((Math.atan2(lamp.z, Math.hypot(lamp.x, lamp.y)) * 180) / Math.PI)}°`

/** Where a lamp is aimed, in words, with its length shown by the sheet’s own unit. */
export function aimOf(lamp: Lamp, show: Show): string {
  const across = isZero(lamp.aim_x)
  const up = isZero(lamp.aim_y)
  if (across && up) return WORDS.aimedAtCentre
  const offsets = [
    ...(across ? [] : [WORDS.aimAcross(show(Math.abs(lamp.aim_x)), lamp.aim_x > 0)]),
    ...(up ? [] : [WORDS.aimUp(show(Math.abs(lamp.aim_y)), lamp.aim_y > 0)]),
  ]
  return WORDS.aimed(listText(offsets), !up)
}

/** The common aim of a symmetric pair, given its right lamp. */
export const pairAim = (right: Lamp, show: Show): string =>
  isZero(right.aim_x) ? aimOf(right, show) : WORDS.eachAimed(show(Math.abs(right.aim_x)), right.aim_x < 0)

/** The position of a lamp across the original: `300 mm left of the centre line`. */
export const besideCentre = (x: number, show: Show): string =>
  isZero(x) ? WORDS.onCentreLine : WORDS.besideCentreLine(show(Math.abs(x)), x > 0)

const positionOf = (lamp: Lamp, show: Show): string => {
  const across = besideCentre(lamp.x, show)
  return isZero(lamp.y) ? across : `${across}, ${WORDS.inPlan(WORDS.fromMiddle(show(Math.abs(lamp.y)), lamp.y > 0))}`
}

/** How wide a lamp’s beam is, in words, in degrees. */
export const beamOf = (lamp: Lamp): string =>
  lamp.beam === undefined ? '' : WORDS.beam(figureText((lamp.beam * 180) / Math.PI))

function describeLamps(lamps: readonly Lamp[], show: Show): readonly string[] {
  const [first, second] = lamps
  if (!first) return []
  if (isPair(lamps) && second) {
    const right = first.x > 0 ? first : second
    const aim = pairAim(right, show) + beamOf(right)
    return [WORDS.pair(show(right.x), show(right.z), elevationOf(right), aim)]
  }
  const each = lamps.map((lamp) =>
    WORDS.lamp(
      WORDS.lampName(lamp.number, lamps.length),
      positionOf(lamp, show),
      show(lamp.z),
      elevationOf(lamp),
      aimOf(lamp, show) + beamOf(lamp),
    ),
  )
  return lamps.length === 1 ? each : [`${capital(plural(lamps.length, 'lamp'))}.`, ...each]
}
