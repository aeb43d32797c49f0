import type { Value } from '../../language/index.ts'
import type { Metres, Radians } from '../canvas/measures.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

/** A lamp of the set-up. The origin is the centre of the original, x right, y up the original, z towards the camera. */
export interface Lamp {
  /** The lamp's place in the list, counted from 1. */
  readonly number: number
  readonly x: Metres
  readonly y: Metres
  readonly z: Metres
  readonly aim_x: Metres
  readonly aim_y: Metres
  /** Full angle of the beam; undefined if not given. */
  readonly beam: Radians | undefined
}

/** The inputs of a set-up drawing in coherent SI; an input is absent while its value is unknown. */
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

/** The parts of a set-up that can be drawn. Heights are measured from the face of the original. */
export interface SetUp {
  readonly originalWidth: Metres | undefined
  readonly originalHeight: Metres | undefined
  readonly thickness: Metres
  readonly fieldWidth: Metres | undefined
  readonly fieldHeight: Metres | undefined
  readonly sensor: Metres | undefined
  readonly lens: Metres | undefined
  readonly clear: Metres | undefined
  /** Height of the mark on the column above the board. */
  readonly column: Metres | undefined
  /** Height at which the rays to the edges of the field meet. */
  readonly apex: Metres | undefined
  readonly lamps: readonly Lamp[]
  readonly mirror: MirrorZone | undefined
  readonly omissions: readonly string[]
}

/** The zone that a glossy original mirrors into the lens: its half-width at the original and at a height above it. */
export interface MirrorZone {
  readonly atOriginal: Metres
  readonly atHeight: Metres
  readonly height: Metres
}

/** Lengths beyond these limits are typing errors, and drawing them would hide everything else. */
const FARTHEST = 100
const LEAST = 1e-5

const within = (value: number): boolean => Number.isFinite(value) && Math.abs(value) <= FARTHEST

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Reads the inputs and lists what cannot be drawn, with the reason. */
export function readSetUp(inputs: SetUpInputs, show: (metres: number) => string): SetUp {
  const omissions: string[] = []

  const length = (value: Value | undefined, what: string): number | undefined => {
    if (value === undefined) return undefined
    if (typeof value !== 'number' || Number.isNaN(value)) {
      omissions.push(WORDS.notALength(what))
      return undefined
    }
    if (value < LEAST) {
      omissions.push(WORDS.lengthTooSmall(what, show(value)))
      return undefined
    }
    if (!within(value)) {
      omissions.push(WORDS.lengthTooLarge(what, show(FARTHEST)))
      return undefined
    }
    return value
  }

  const originalWidth = length(inputs.original_width, WORDS.originalWidth)
  const originalHeight = length(inputs.original_height, WORDS.originalHeight)
  const fieldWidth = length(inputs.field_width, WORDS.fieldWidth)
  const fieldHeight = length(inputs.field_height, WORDS.fieldHeight)
  const sensor = length(inputs.sensor_to_original ?? inputs.original_to_sensor, WORDS.camera)
  const lens = length(inputs.lens_to_original, WORDS.lensDistance)
  const clear = length(inputs.clear_distance, WORDS.clearDistance)
  const column = length(inputs.column_height, WORDS.column)
  const entrance = length(inputs.entrance_distance, WORDS.entranceRays)
  const apex = entrance ?? lens
  const thickness = inputs.original_thickness === 0 ? 0 : (length(inputs.original_thickness, WORDS.thickness) ?? 0)

  if (originalWidth === undefined && originalHeight !== undefined) omissions.push(WORDS.originalNeedsWidth)
  if (originalWidth !== undefined && originalHeight === undefined) omissions.push(WORDS.originalNeedsHeight)
  if (fieldWidth === undefined && fieldHeight !== undefined) omissions.push(WORDS.fieldNeedsWidth)
  if (fieldWidth !== undefined && fieldHeight === undefined) omissions.push(WORDS.fieldNeedsHeight)
  if (fieldWidth !== undefined && apex === undefined) omissions.push(WORDS.raysNeedLens)
  const tip = clear ?? lens ?? apex
  if (sensor !== undefined && tip !== undefined && tip >= sensor)
    omissions.push(WORDS.lensAboveSensor(show(tip), show(sensor)))
  if (sensor === undefined && tip !== undefined) omissions.push(WORDS.bodyNeedsSensor)

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
    const which = WORDS.lampName(number, list.length)
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
      omissions.push(WORDS.lampTooFar(which, show(FARTHEST)))
      return []
    }
    if (lamp.z < LEAST) {
      omissions.push(WORDS.lampTooLow(which, lamp.z < 0 ? show(-lamp.z) : undefined))
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
  const stated = length(given, WORDS.mirrorZone)
  if (lamps.length === 0 || originalWidth === undefined || (stated === undefined && apex === undefined)) {
    if (stated !== undefined) {
      omissions.push(lamps.length === 0 ? WORDS.mirrorNeedsLamp : WORDS.mirrorNeedsWidth)
    }
    return undefined
  }
  const height = Math.max(...lamps.map((lamp) => lamp.z))
  const atOriginal = originalWidth / 2
  const atHeight = stated ?? atOriginal * (1 + height / (apex as number))
  return within(atHeight) ? { atOriginal, atHeight, height } : undefined
}

/** Whether a set-up has nothing that could be drawn. */
export function isEmpty(setUp: SetUp): boolean {
  const { originalWidth, fieldWidth, sensor, lens, clear, column, apex, lamps } = setUp
  return (
    [originalWidth, fieldWidth, sensor, lens, clear, column, apex].every((one) => one === undefined) &&
    lamps.length === 0
  )
}
