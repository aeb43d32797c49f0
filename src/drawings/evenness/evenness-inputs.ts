import type { LampNumbers } from '../../functions/lamps/light-field.ts'
import type { Value } from '../../language/index.ts'
import type { DrawingInputs } from '../canvas/drawing-options.ts'
import type { Metres, Radians, Stops } from '../canvas/measures.ts'
import { numberReader, numbersOf } from '../canvas/number-inputs.ts'
import { EVENNESS_WORDS as WORDS } from './words.ts'

/** The usable inputs of a map of the light. */
export interface FieldInputs {
  readonly lamps: readonly LampNumbers[]
  readonly width: Metres | undefined
  readonly height: Metres | undefined
  /** The spread allowed. */
  readonly limit: Stops | undefined
  /** Five or nine readings in reading order, in stops relative to an arbitrary zero. */
  readonly readings: readonly Stops[] | undefined
  readonly omissions: readonly string[]
}

/** Larger lengths are typing errors. */
const FARTHEST: Metres = 100
/** The beam angle of a lamp whose beam is not given: that of a diffuse surface, half intensity at 60° off axis. */
const DIFFUSE: Radians = (2 * Math.PI) / 3

/** The field of light that the inputs describe, lengths in metres; what is missing or impossible is among its omissions. */
export function readField(inputs: DrawingInputs, show: (metres: number) => string): FieldInputs {
  const omissions: string[] = []
  const read = numberReader(omissions, show)
  const width = read.positive(inputs.original_width, WORDS.originalWidth, FARTHEST)
  const height = read.positive(inputs.original_height, WORDS.originalHeight, FARTHEST)
  const limit = numberReader(omissions).positive(inputs.limit, WORDS.limit, 100)
  const lamps = readLamps(inputs.lamps, omissions, show)
  if (inputs.lamps !== undefined && lamps.length === 0 && omissions.length === 0) omissions.push(WORDS.noLamp)
  return { lamps, width, height, limit, readings: readReadings(inputs, omissions), omissions }
}

/** A diffuser is a list of point sources, so lists are flattened. */
const flat = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value.flatMap(flat) : [value])

/** The lamps of an input, each with every figure; those that cannot light anything are among the omissions. */
export function readLamps(
  value: Value | undefined,
  omissions: string[],
  show: (metres: number) => string,
): LampNumbers[] {
  if (value === undefined) return []
  const all = flat(value)
  return all.flatMap((one, at) => {
    const which = WORDS.lampName(at + 1, all.length)
    const part = (name: string, otherwise: number): number => {
      const found = typeof one === 'object' && one !== null ? (one as Record<string, unknown>)[name] : undefined
      return found === undefined ? otherwise : typeof found === 'number' ? found : Number.NaN
    }
    const lamp = {
      x: part('x', Number.NaN),
      y: part('y', 0),
      z: part('z', Number.NaN),
      aim_x: part('aim_x', 0),
      aim_y: part('aim_y', 0),
      intensity: part('intensity', 1000),
      beam_angle: part('beam_angle', DIFFUSE),
    }
    const { intensity, beam_angle, ...places } = lamp
    const why = !Object.values(places).every((place) => Math.abs(place) <= FARTHEST)
      ? WORDS.lampTooFar(show(FARTHEST))
      : lamp.z < 0
        ? WORDS.lampBelow(show(-lamp.z))
        : lamp.z < 1e-5
          ? WORDS.lampNotAbove
          : !(intensity > 0 && intensity < 1e12)
            ? WORDS.intensityUnknown
            : !(beam_angle > 0 && beam_angle < Math.PI)
              ? WORDS.beamOutOfRange
              : undefined
    if (why === undefined) return [lamp]
    omissions.push(WORDS.lampLeftOut(which, why))
    return []
  })
}

const SORTS: readonly (readonly [input: string, inStops: (reading: number) => number])[] = [
  ['readings', Math.log2],
  ['readings_in_stops', (reading) => reading],
  ['readings_in_apertures', (reading) => 2 * Math.log2(reading)],
]

function readReadings(inputs: DrawingInputs, omissions: string[]): readonly number[] | undefined {
  const given = SORTS.find(([input]) => inputs[input] !== undefined)
  if (!given) return undefined
  const [input, inStops] = given
  const stops = numbersOf(inputs[input])?.map(inStops)
  if (!stops?.every(Number.isFinite)) omissions.push(WORDS.readingsNotPositive)
  else if (stops.length !== 5 && stops.length !== 9) omissions.push(WORDS.readingsCount(stops.length))
  else return stops
  return undefined
}
