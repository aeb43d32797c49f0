import { describeType, type Type } from '../../language/index.ts'
import { clip, type Dimension, type DisplayUnit, type Notation, ReadError, readQuantity } from '../../units/index.ts'
import type { Result } from '../schema/document.ts'
import { type MeterConstants, readLight } from './light-reading.ts'
import { convertedBy, explainRead, type GivenReading } from './read-given.ts'
import * as words from './words.ts'

/** The unit a type is written in where its cell declares none. */
export function unitOfType(type: Type, unit: DisplayUnit | undefined): DisplayUnit | undefined {
  if (unit || type.kind !== 'number' || !type.notation) return unit
  return notationUnit(type.dimension, type.notation)
}

/** The unit of figures written in a notation of the trade. */
export const notationUnit = (dimension: Dimension, notation: Notation): DisplayUnit => ({
  dimension,
  factor: 1,
  offset: 0,
  symbol: notation === 'shutter' ? 's' : '',
  notation,
})

/**
 * Reads what was measured for a result, light by the constants of the meters; undefined where nothing was. What cannot be
 * read is an error in this text alone.
 */
export function readMeasured(
  text: string | undefined,
  type: Type,
  unit: DisplayUnit | undefined,
  constants?: MeterConstants,
): GivenReading | undefined {
  if (text === undefined || text.trim() === '') return undefined
  try {
    const refuse = (message: string): never => {
      throw new ReadError(message, 0, text.length)
    }
    if (type.kind !== 'number') return refuse(words.measuredOnlyQuantity(describeType(type)))
    const shown = unitOfType(type, unit)
    const reading = readLight(text, shown, constants) ?? readQuantity(text, shown)
    const { value, dimension, tolerance, offers } = reading
    if (dimension !== type.dimension)
      refuse(words.measuredOtherKind(describeType(type), clip(text), describeType({ kind: 'number', dimension })))
    return { value, offers, ...convertedBy([reading]), ...(tolerance === undefined ? {} : { tolerance }) }
  } catch (error) {
    if (!(error instanceof ReadError)) throw error
    return { offers: [], error: explainRead(error, text) }
  }
}

/** A result with something measured in its place; empty, the computed value feeds onward again. */
export function withMeasured(cell: Result, text: string): Result {
  const { measured: _, measured_under: _under, ...rest } = cell
  return text.trim() === '' ? (rest as Result) : { ...(rest as Result), measured: text }
}
