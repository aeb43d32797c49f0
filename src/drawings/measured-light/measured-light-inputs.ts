import type { LampNumbers } from '../../functions/lamps/light-field.ts'
import type { DrawingInputs } from '../canvas/drawing-options.ts'
import type { Metres, Stops } from '../canvas/measures.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { readLamps } from '../evenness/evenness-inputs.ts'
import { numbersIn } from '../plots/given-values.ts'
import { type Covered, computedFields, type Fields, fieldsFrom, type Share } from './fields.ts'
import { MEASURED_LIGHT_WORDS as WORDS } from './words.ts'

/** The usable inputs of a map of measured light. */
export interface MeasuredLight {
  readonly measured: Fields | undefined
  /** As lamps and lens give it, over the same fields. */
  readonly computed: Fields | undefined
  /** Whether the computed light includes the lens’s falloff. */
  readonly withLens: boolean
  /** What part of the picture was measured. */
  readonly share: Share
  /** What the picture covers on the original. */
  readonly size: readonly [Metres, Metres] | undefined
  readonly limit: Stops | undefined
  readonly omissions: readonly string[]
}

const FARTHEST: Metres = 100
const WHOLE: Share = [0, 0, 1, 1]

/** Reads the inputs of a map of measured light; what is missing or impossible is among its omissions. */
export function readMeasuredLight(inputs: DrawingInputs, show: (metres: number) => string): MeasuredLight {
  const omissions: string[] = []
  const read = numberReader(omissions, show)
  const measured = readGrid(inputs.measured, omissions)
  const width = read.positive(inputs.field_width, WORDS.fieldWidth, FARTHEST)
  const height = read.positive(inputs.field_height, WORDS.fieldHeight, FARTHEST)
  const plain = numberReader(omissions)
  const limit = plain.positive(inputs.limit, WORDS.limit, 100)
  const magnification = plain.positive(inputs.magnification, WORDS.magnification, 100)
  const exit = read.positive(inputs.exit_distance, WORDS.exitDistance, FARTHEST)
  const lamps = readLamps(inputs.lamps, omissions, show)
  const pupil = magnification !== undefined && exit !== undefined ? exit / magnification : undefined
  const share = readShare(inputs.covers, omissions)
  const size = width !== undefined && height !== undefined ? ([width, height] as const) : undefined
  const covered = size && { width: size[0], height: size[1], share, pupil }
  const computed = measured && computeBeside(lamps, covered, measured, omissions)
  return { measured, computed, withLens: pupil !== undefined, share, size, limit, omissions }
}

function computeBeside(
  lamps: readonly LampNumbers[],
  covered: Covered | undefined,
  { columns, rows }: Fields,
  omissions: string[],
): Fields | undefined {
  if (lamps.length === 0) return undefined
  if (!covered) {
    omissions.push(WORDS.noField)
    return undefined
  }
  const fields = computedFields(lamps, covered, columns, rows)
  if (!fields) omissions.push(WORDS.noLight)
  return fields
}

function readGrid(value: DrawingInputs[string], omissions: string[]): Fields | undefined {
  if (value === undefined) return undefined
  const rows = Array.isArray(value) ? value.map((row) => (Array.isArray(row) ? numbersIn(row) : undefined)) : []
  const isWhole = rows.length > 0 && rows.every((row) => row !== undefined)
  const fields = isWhole ? fieldsFrom(rows as readonly (readonly number[])[]) : undefined
  if (!fields) omissions.push(WORDS.notAGrid)
  return fields
}

function readShare(value: DrawingInputs[string], omissions: string[]): Share {
  if (value === undefined) return WHOLE
  const share = numbersIn(value)
  const [left, top, width, height] = share ?? []
  const isShare =
    share?.length === 4 &&
    share.every((one) => one >= 0 && one <= 1) &&
    (width as number) > 0 &&
    (height as number) > 0 &&
    (left as number) + (width as number) <= 1 + 1e-9 &&
    (top as number) + (height as number) <= 1 + 1e-9
  if (isShare) return share as unknown as Share
  omissions.push(WORDS.coversUnread)
  return WHOLE
}
