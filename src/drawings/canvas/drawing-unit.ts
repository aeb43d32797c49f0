import type { Value } from '../../language/index.ts'
import { showFigure } from '../../units/index.ts'

/** The unit a drawing's figures are in. */
export type LengthUnit = 'mm' | 'cm' | 'in'

export const METRES: Readonly<Record<LengthUnit, number>> = { mm: 0.001, cm: 0.01, in: 0.0254 }

/** The unit asked for where a drawing knows it, millimetres otherwise. */
export const lengthUnit = (asked: string | undefined): LengthUnit =>
  asked !== undefined && Object.hasOwn(METRES, asked) ? (asked as LengthUnit) : 'mm'

/** A length as the drawing writes it: `857 mm`. */
export const lengthIn =
  (unit: LengthUnit) =>
  (metres: number): string =>
    `${showFigure(Number((metres / METRES[unit]).toPrecision(9)))} ${unit}`

/** A lamp of the set-up: origin at the centre of the original, x right, y up the original, z towards the camera. */
export interface Lamp {
  /** Its place in the list, from 1. */
  readonly number: number
  readonly x: number
  readonly y: number
  readonly z: number
  readonly aim_x: number
  readonly aim_y: number
  /** Full angle of the beam; absent where not given. */
  readonly beam: number | undefined
}

/** What a set-up drawing is fed with: coherent SI, each where it is known. */
export interface SetUpInputs {
  readonly original_width?: Value
  readonly original_height?: Value
  readonly original_thickness?: Value
  readonly field_width?: Value
  readonly field_height?: Value
  readonly sensor_to_original?: Value
  readonly original_to_sensor?: Value
  readonly lens_to_original?: Value
  readonly clear_distance?: Value
  readonly column_height?: Value
  readonly entrance_distance?: Value
  readonly lamps?: Value
  readonly mirror_zone?: Value
  readonly focal?: Value
  readonly [other: string]: Value | undefined
}

/** A set-up as far as it can be drawn. Metres, heights above the original's face. */
export interface SetUp {
  readonly originalWidth: number | undefined
  readonly originalHeight: number | undefined
  readonly thickness: number
  readonly fieldWidth: number | undefined
  readonly fieldHeight: number | undefined
  readonly sensor: number | undefined
  readonly lens: number | undefined
  readonly clear: number | undefined
  /** The mark on the column, above the board. */
  readonly column: number | undefined
  /** Where the rays to the field's edges meet. */
  readonly apex: number | undefined
  readonly lamps: readonly Lamp[]
  readonly mirror: MirrorZone | undefined
  readonly omissions: readonly string[]
}

/** What a glossy original mirrors: its half-width at the original, and at a height above it. */
export interface MirrorZone {
  readonly atOriginal: number
  readonly atHeight: number
  readonly height: number
}

/** Beyond a hundred metres, or under a hundredth of a millimetre, a figure is a slip of the hand. */
const FARTHEST = 100
const LEAST = 1e-5

const within = (value: number): boolean => Number.isFinite(value) && Math.abs(value) <= FARTHEST

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Sorts the inputs into what can be drawn and what omissions, with why. */
export function readSetUp(inputs: SetUpInputs, show: (metres: number) => string): SetUp {
  const omissions: string[] = []

  const length = (value: Value | undefined, what: string): number | undefined => {
    if (value === undefined) return undefined
    if (typeof value !== 'number' || Number.isNaN(value)) {
      omissions.push(`${what} is not drawn: what is given is not a length.`)
      return undefined
    }
    if (value < LEAST) {
      omissions.push(`${what} is not drawn: ${show(value)} is not above zero.`)
      return undefined
    }
    if (!within(value)) {
      omissions.push(`${what} is not drawn: it is more than ${show(FARTHEST)}.`)
      return undefined
    }
    return value
  }

  const originalWidth = length(inputs.original_width, 'The width of the original')
  const originalHeight = length(inputs.original_height, 'The height of the original')
  const fieldWidth = length(inputs.field_width, 'The width of the field')
  const fieldHeight = length(inputs.field_height, 'The height of the field')
  const sensor = length(inputs.sensor_to_original ?? inputs.original_to_sensor, 'The camera')
  const lens = length(inputs.lens_to_original, 'The distance from lens to original')
  const clear = length(inputs.clear_distance, 'The clear distance')
  const column = length(inputs.column_height, 'The column')
  const entrance = length(inputs.entrance_distance, 'The field’s rays from the entrance pupil')
  const apex = entrance ?? lens
  const thickness = inputs.original_thickness === 0 ? 0 : (length(inputs.original_thickness, 'The thickness') ?? 0)

  if (originalWidth === undefined && originalHeight !== undefined)
    omissions.push('The original is not drawn: its width is not known.')
  if (originalWidth !== undefined && originalHeight === undefined)
    omissions.push('The original is not drawn in plan: its height is not known.')
  if (fieldWidth === undefined && fieldHeight !== undefined)
    omissions.push('The field is not drawn: its width is not known.')
  if (fieldWidth !== undefined && fieldHeight === undefined)
    omissions.push('The field is not drawn in plan: its height is not known.')
  if (fieldWidth !== undefined && apex === undefined)
    omissions.push('The rays to the field’s edges are not drawn: the distance of the lens is not known.')
  const tip = clear ?? lens ?? apex
  if (sensor !== undefined && tip !== undefined && tip >= sensor)
    omissions.push(
      `The camera is not drawn whole: its lens ends ${show(tip)} above the original, the sensor ${show(sensor)}.`,
    )
  if (sensor === undefined && tip !== undefined)
    omissions.push('The camera’s body is not drawn: the distance from original to sensor is not known.')

  const lamps = readLamps(inputs.lamps, omissions, show)
  return {
    originalWidth,
    originalHeight,
    thickness,
    fieldWidth,
    fieldHeight,
    sensor,
    lens,
    clear,
    column,
    apex,
    lamps,
    mirror: mirrorZone(inputs.mirror_zone, length, originalWidth, apex, lamps, omissions),
    omissions,
  }
}

function readLamps(value: Value | undefined, omissions: string[], show: (metres: number) => string): readonly Lamp[] {
  if (value === undefined) return []
  const list: readonly unknown[] = Array.isArray(value) ? value : [value]
  return list.flatMap((one, at): readonly Lamp[] => {
    const number = at + 1
    const which = list.length === 1 ? 'The lamp' : `Lamp ${number}`
    const part = (name: string, otherwise?: number): number => {
      const found = isRecord(one) ? one[name] : undefined
      return typeof found === 'number' ? found : found === undefined && otherwise !== undefined ? otherwise : Number.NaN
    }
    const lamp = {
      number,
      x: part('x'),
      y: part('y', 0),
      z: part('z'),
      aim_x: part('aim_x', 0),
      aim_y: part('aim_y', 0),
    }
    if (!Object.values(lamp).every(within)) {
      omissions.push(
        `${which} is not drawn: where it stands or aims is not known, or more than ${show(FARTHEST)} away.`,
      )
      return []
    }
    if (lamp.z < LEAST) {
      const where = lamp.z < 0 ? `${show(-lamp.z)} below` : 'no higher than'
      omissions.push(`${which} is not drawn: it is ${where} the original.`)
      return []
    }
    const beam = part('beam_angle')
    return [{ ...lamp, beam: beam > 0 && beam <= Math.PI ? beam : undefined }]
  })
}

function mirrorZone(
  given: Value | undefined,
  length: (value: Value | undefined, what: string) => number | undefined,
  originalWidth: number | undefined,
  apex: number | undefined,
  lamps: readonly Lamp[],
  omissions: string[],
): MirrorZone | undefined {
  const stated = length(given, 'The mirror zone')
  if (lamps.length === 0 || originalWidth === undefined || (stated === undefined && apex === undefined)) {
    if (stated !== undefined) {
      const lacking = lamps.length === 0 ? 'no lamp gives it a height' : 'the width of the original is not known'
      omissions.push(`The mirror zone is not drawn: ${lacking}.`)
    }
    return undefined
  }
  const height = Math.max(...lamps.map((lamp) => lamp.z))
  const atOriginal = originalWidth / 2
  const atHeight = stated ?? atOriginal * (1 + height / (apex as number))
  return within(atHeight) ? { atOriginal, atHeight, height } : undefined
}

/** Whether nothing of a set-up is known that could be drawn. */
export function isEmpty(setUp: SetUp): boolean {
  const { originalWidth, fieldWidth, sensor, lens, clear, column, apex, lamps } = setUp
  return (
    [originalWidth, fieldWidth, sensor, lens, clear, column, apex].every((one) => one === undefined) &&
    lamps.length === 0
  )
}
