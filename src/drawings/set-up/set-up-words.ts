import { showFigure } from '../../units/index.ts'
import type { Lamp, SetUp } from '../canvas/drawing-unit.ts'
import { sameLength } from './lamp-choice.ts'

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]
export const inWords = (count: number): string => NUMBERS[count] ?? String(count)
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

export const series = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`

/** The drawing in sentences, with every figure it shows. */
export function describeSetUp(setUp: SetUp, show: (metres: number) => string, scale: string): string {
  const size = (width: number, height: number | undefined): string =>
    height === undefined ? `${show(width)} wide` : `${show(width).replace(/ \D+$/, '')} × ${show(height)}`
  const sentences = [`Elevation and plan of the set-up at ${scale}.`]
  const { originalWidth, originalHeight, fieldWidth, fieldHeight, sensor, lens, clear, column, mirror, lamps } = setUp

  if (originalWidth !== undefined) sentences.push(`The original is ${size(originalWidth, originalHeight)}.`)
  if (fieldWidth !== undefined) sentences.push(`The camera sees a field of ${size(fieldWidth, fieldHeight)}.`)
  const heights = [
    ...(sensor === undefined ? [] : [`the sensor ${show(sensor)}`]),
    ...(lens === undefined ? [] : [`the lens (its front principal plane) ${show(lens)}`]),
    ...(clear === undefined ? [] : [`the lens’s front rim ${show(clear)}`]),
  ]
  if (heights.length > 0) {
    sentences.push(`${capital(series(heights))} ${heights.length === 1 ? 'stands' : 'stand'} above the original.`)
  }
  if (column !== undefined) sentences.push(`The mark on the column is ${show(column)} above the board.`)
  sentences.push(...describeLamps(lamps, show))
  if (mirror) {
    sentences.push(
      `At ${show(mirror.height)} the mirror zone reaches ${show(mirror.atHeight)} to either side of the centre line${clearance(setUp, show)}.`,
    )
  }
  if (heights.length > 0 || lamps.length > 0) {
    sentences.push('Camera, column, board and lamps are placed to scale; their own sizes are only for orientation.')
  }
  return sentences.join(' ')
}

/** Half the zone's width at a lamp's height. */
const zoneAt = (setUp: SetUp, z: number): number => {
  const mirror = setUp.mirror as NonNullable<SetUp['mirror']>
  return mirror.atOriginal + ((mirror.atHeight - mirror.atOriginal) * z) / mirror.height
}

function clearance(setUp: SetUp, show: (metres: number) => string): string {
  const gaps = setUp.lamps.map((lamp) => Math.abs(lamp.x) - zoneAt(setUp, lamp.z))
  const least = Math.min(...gaps)
  const whose = setUp.lamps.length === 1 ? 'the lamp’s centre' : 'the lamps’ centres'
  if (least > 0) return `; ${whose} clear it by ${show(least)}`.replace('centre clear', 'centre clears')
  const within = setUp.lamps.filter((_, at) => (gaps[at] as number) <= 0).map((lamp) => lamp.number)
  return setUp.lamps.length === 1
    ? '; the lamp stands in it'
    : `; ${within.length === setUp.lamps.length ? 'the lamps stand' : `lamp ${series(within.map(String))} ${within.length === 1 ? 'stands' : 'stand'}`} in it`
}

export const elevationOf = (lamp: Lamp): string =>
  `${Math.round((Math.atan2(lamp.z, Math.hypot(lamp.x, lamp.y)) * 180) / Math.PI)}°`

export function aimOf(lamp: Lamp, show: (metres: number) => string): string {
  const across = Math.abs(lamp.aim_x) < 5e-4
  const up = Math.abs(lamp.aim_y) < 5e-4
  if (across && up) return 'aimed at the centre'
  const parts = [
    ...(across ? [] : [`${show(Math.abs(lamp.aim_x))} to the ${lamp.aim_x < 0 ? 'left' : 'right'}`]),
    ...(up
      ? []
      : [`${show(Math.abs(lamp.aim_y))} ${lamp.aim_y < 0 ? 'towards the lower edge' : 'towards the upper edge'}`]),
  ]
  return `aimed ${series(parts)} of the centre`.replace(/(edge) of the centre/, '$1 from the centre')
}

const placeOf = (lamp: Lamp, show: (metres: number) => string): string => {
  const across =
    Math.abs(lamp.x) < 5e-4
      ? 'on the centre line'
      : `${show(Math.abs(lamp.x))} ${lamp.x < 0 ? 'left' : 'right'} of the centre line`
  const up =
    Math.abs(lamp.y) < 5e-4 ? '' : `, ${show(Math.abs(lamp.y))} ${lamp.y < 0 ? 'below' : 'above'} the middle in plan`
  return across + up
}

export const beamOf = (lamp: Lamp): string =>
  lamp.beam === undefined ? '' : `, beam ${showFigure((lamp.beam * 180) / Math.PI)}°`

/** Whether the lamps are two, mirrored in the centre line. */
export function isPair(lamps: readonly Lamp[]): boolean {
  const [first, second] = lamps
  return (
    lamps.length === 2 &&
    first !== undefined &&
    second !== undefined &&
    Math.abs(first.x) > 5e-4 &&
    sameLength(first.x, -second.x) &&
    sameLength(first.y, second.y) &&
    sameLength(first.z, second.z) &&
    sameLength(first.aim_x, -second.aim_x) &&
    sameLength(first.aim_y, second.aim_y)
  )
}

function describeLamps(lamps: readonly Lamp[], show: (metres: number) => string): readonly string[] {
  const [first, second] = lamps
  if (!first) return []
  if (isPair(lamps) && second) {
    const right = first.x > 0 ? first : second
    const aim =
      Math.abs(right.aim_x) < 5e-4
        ? aimOf(right, show)
        : `each aimed ${show(Math.abs(right.aim_x))} ${right.aim_x < 0 ? 'past' : 'short of'} the centre`
    return [
      `Two lamps stand ${show(right.x)} to either side of the centre line and ${show(right.z)} above the original, ${elevationOf(right)} up seen from its centre, ${aim}${beamOf(right)}.`,
    ]
  }
  const each = lamps.map(
    (lamp) =>
      `${lamps.length === 1 ? 'The lamp' : `Lamp ${lamp.number}`} stands ${placeOf(lamp, show)}, ${show(lamp.z)} above the original, ${elevationOf(lamp)} up seen from its centre, ${aimOf(lamp, show)}${beamOf(lamp)}.`,
  )
  return lamps.length === 1 ? each : [`${capital(inWords(lamps.length))} lamps.`, ...each]
}
