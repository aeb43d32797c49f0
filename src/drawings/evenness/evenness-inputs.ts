import type { LampNumbers } from '../../functions/lamps/light-field.ts'
import type { Value } from '../../language/index.ts'
import type { DrawingInputs } from '../canvas/drawing-options.ts'
import { numberReader, numbersOf } from '../canvas/number-inputs.ts'

/** A field of light as far as it can be drawn. */
export interface FieldInputs {
  readonly lamps: readonly LampNumbers[]
  readonly width: number | undefined
  readonly height: number | undefined
  /** Spread allowed, in stops. */
  readonly limit: number | undefined
  /** Readings taken, in stops from any zero, five or nine in reading order. */
  readonly readings: readonly number[] | undefined
  readonly omissions: readonly string[]
}

/** Beyond a hundred metres a figure is a slip of the hand. */
const FARTHEST = 100
const DIFFUSE = (2 * Math.PI) / 3

export function readField(inputs: DrawingInputs, show: (metres: number) => string): FieldInputs {
  const omissions: string[] = []
  const read = numberReader(omissions, show)
  const width = read.positive(inputs.original_width, 'The width of the original', FARTHEST)
  const height = read.positive(inputs.original_height, 'The height of the original', FARTHEST)
  const limit = numberReader(omissions).positive(inputs.limit, 'The spread allowed', 100)
  const lamps = readLamps(inputs.lamps, omissions, show)
  if (inputs.lamps !== undefined && lamps.length === 0 && omissions.length === 0) omissions.push('There is no lamp.')
  return { lamps, width, height, limit, readings: readReadings(inputs, omissions), omissions }
}

/** Diffusers are lists of points: the lamps of nested lists are all taken. */
const flat = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value.flatMap(flat) : [value])

function readLamps(value: Value | undefined, omissions: string[], show: (metres: number) => string): LampNumbers[] {
  if (value === undefined) return []
  const all = flat(value)
  return all.flatMap((one, at) => {
    const which = all.length === 1 ? 'The lamp' : `Lamp ${at + 1}`
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
      ? `where it stands or aims is not known, or more than ${show(FARTHEST)} away`
      : lamp.z < 0
        ? `it is ${show(-lamp.z)} below the original`
        : lamp.z < 1e-5
          ? 'it is no higher than the original'
          : !(intensity > 0 && intensity < 1e12)
            ? 'how strong it is, is not known'
            : !(beam_angle > 0 && beam_angle < Math.PI)
              ? 'its beam is not between 0° and 180°'
              : undefined
    if (why === undefined) return [lamp]
    omissions.push(`${which} is left out: ${why}.`)
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
  if (!stops?.every(Number.isFinite))
    omissions.push('The readings are left out: not each of them is a number above zero.')
  else if (stops.length !== 5 && stops.length !== 9)
    omissions.push(
      `The readings are left out: there are ${stops.length}; five (corners and centre) or nine can be laid beside the computed ones.`,
    )
  else return stops
  return undefined
}
