import type { Grid } from '../plots/isolines.ts'
import type { Fields } from './fields.ts'

/** Lines between two fields, so that contours read as curves. */
const BETWEEN = 6
/** Larger grids are smooth as they are. */
const MOST = 40

/** The fields as a grid from the lower left, with values between them on a cubic through them (Catmull and Rom). */
export function smoothed({ columns, rows, stops }: Fields): Grid {
  const raised = Array.from({ length: rows }, (_, row) =>
    stops.slice((rows - 1 - row) * columns, (rows - row) * columns),
  )
  const wide = raised.map((row) => between(row))
  const across = wide[0]?.length ?? 0
  const tall = Array.from({ length: across }, (_, column) => between(wide.map((row) => row[column] as number)))
  const up = tall[0]?.length ?? 0
  const values = Array.from({ length: up }, (_, row) => tall.map((column) => column[row] as number)).flat()
  return { columns: across, rows: up, values }
}

function between(values: readonly number[]): number[] {
  const last = values.length - 1
  if (last < 1 || last >= MOST) return [...values]
  const at = (i: number): number =>
    // Beyond an end the line goes on straight.
    i < 0
      ? 2 * (values[0] as number) - (values[1] as number)
      : i > last
        ? 2 * (values[last] as number) - (values[last - 1] as number)
        : (values[i] as number)
  const points: number[] = []
  for (let i = 0; i < last; i++)
    for (let k = 0; k < BETWEEN; k++) {
      const t = k / BETWEEN
      const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)]
      points.push(b + (t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)))) / 2)
    }
  return [...points, values[last] as number]
}
