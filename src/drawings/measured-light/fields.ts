import { illuminanceAt, type LampNumbers } from '../../functions/lamps/light-field.ts'
import type { Metres, Stops } from '../canvas/measures.ts'

/** Fields row by row from the upper left, in stops from the mean of their light. */
export interface Fields {
  readonly columns: number
  readonly rows: number
  readonly stops: readonly Stops[]
}

/** A field with its place in the list, counted from zero. */
interface Extreme {
  readonly at: number
  readonly stops: Stops
}

/** What part of the picture was measured, as shares of its width and height: left, top, width, height. */
export type Share = readonly [number, number, number, number]

/** Where light is computed: how much of the original the picture covers, and what the lens takes away. */
export interface Covered {
  readonly width: Metres
  readonly height: Metres
  readonly share: Share
  /** The exit pupil’s distance from the sensor over the magnification; undefined to leave the lens out. */
  readonly pupil: Metres | undefined
}

/** Rows of light as fields; undefined where a row differs in length or a number is not above zero. */
export function fieldsFrom(rows: readonly (readonly number[])[]): Fields | undefined {
  const columns = rows[0]?.length ?? 0
  if (columns === 0 || rows.some((row) => row.length !== columns)) return undefined
  return fromLight(rows.flat(), columns)
}

function fromLight(light: readonly number[], columns: number): Fields | undefined {
  if (!light.every((one) => one > 0 && Number.isFinite(one))) return undefined
  const mean = light.reduce((sum, one) => sum + one, 0) / light.length
  return { columns, rows: light.length / columns, stops: light.map((one) => Math.log2(one / mean)) }
}

/** Points of a field, each way, at which the computed light is averaged. */
const MOST_POINTS = 20_000

/**
 * The mean light of each field as the lamps and, by the fourth power of the cosine, the lens give it: the fields of the
 * picture as they lie on the original. Undefined where one is dark.
 */
export function computedFields(
  lamps: readonly LampNumbers[],
  { width, height, share: [left, top, across, down], pupil }: Covered,
  columns: number,
  rows: number,
): Fields | undefined {
  const points = Math.max(1, Math.min(5, Math.floor(Math.sqrt(MOST_POINTS / (columns * rows)))))
  const light: number[] = []
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      let sum = 0
      for (let j = 0; j < points; j++)
        for (let i = 0; i < points; i++) {
          const x = (left + (across * (column + (i + 0.5) / points)) / columns - 0.5) * width
          const y = (0.5 - top - (down * (row + (j + 0.5) / points)) / rows) * height
          const falloff = pupil === undefined ? 1 : (1 + (x * x + y * y) / (pupil * pupil)) ** -2
          sum += illuminanceAt(lamps, x, y) * falloff
        }
      light.push(sum)
    }
  return fromLight(light, columns)
}

/** How much brighter the first is than the second, field by field. */
export const lessOther = (one: Fields, other: Fields): Fields => ({
  ...one,
  stops: one.stops.map((stops, at) => stops - (other.stops[at] as number)),
})

/** The greatest or the least field. */
export function extreme({ stops }: Fields, sign: 1 | -1): Extreme {
  let at = 0
  for (const [i, value] of stops.entries()) if ((value - (stops[at] as number)) * sign > 0) at = i
  return { at, stops: stops[at] as number }
}

/** The stops between the greatest and the least field. */
export const spreadOf = (fields: Fields): Stops => extreme(fields, 1).stops - extreme(fields, -1).stops

/** The root of the mean of the squares of all fields. */
export const rootMeanSquare = ({ stops }: Fields): Stops =>
  Math.sqrt(stops.reduce((sum, one) => sum + one * one, 0) / stops.length)
