import { contours } from 'd3-contour'
import { type Point, point } from '../canvas/geometry.ts'

/** Samples over a rectangle, row by row from the lower left; the outermost samples are on its edges. */
export interface Grid {
  readonly columns: number
  readonly rows: number
  readonly values: readonly number[]
}

/**
 * The lines where the values cross a level: runs of points in fractions of the rectangle, (0, 0) its lower left corner. A run
 * that ends at its start is a closed line.
 */
export function isoline({ columns, rows, values }: Grid, level: number): readonly (readonly Point[])[] {
  const area = contours()
    .size([columns, rows])
    .contour(values as number[], level)
  return area.coordinates.flatMap((polygon) =>
    polygon.flatMap((ring) =>
      insideRuns(ring, columns, rows).map((run) =>
        run.map(([x, y]) => point((x - 0.5) / (columns - 1), (y - 0.5) / (rows - 1))),
      ),
    ),
  )
}

type Place = readonly [x: number, y: number]

/** The outline of a contour area also runs half a cell outside the edges of the rectangle; only the part inside is an isoline. */
function insideRuns(
  ring: readonly (readonly number[])[],
  columns: number,
  rows: number,
): readonly (readonly Place[])[] {
  const within = ([x, y]: Place): boolean => x >= 0.5 && x <= columns - 0.5 && y >= 0.5 && y <= rows - 0.5
  const closed = ring.map(([x, y]): Place => [x as number, y as number])
  const open = closed.slice(0, -1)
  const start = open.findIndex((one) => !within(one))
  if (start < 0) return [closed]
  const runs: Place[][] = []
  let run: Place[] = []
  for (let step = 1; step <= open.length; step++) {
    const one = open[(start + step) % open.length] as Place
    if (within(one)) run.push(one)
    else {
      if (run.length > 1) runs.push(run)
      run = []
    }
  }
  return runs
}

const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10]
/** More lines than this would be too dense to read. */
const MOST_LINES = 9

/** The interval between isolines in stops for a spread in stops. */
export function isolineStep(spread: number): number {
  return STEPS.find((step) => spread / step <= MOST_LINES) ?? 20
}

/** The multiples of a step between two values. */
export function levelsBetween(least: number, greatest: number, step: number): readonly number[] {
  const first = Math.ceil(least / step + 1e-9)
  const count = Math.max(0, Math.floor(greatest / step - 1e-9) - first + 1)
  // Dividing by a whole number avoids rounding errors such as 3 × 0.1 = 0.30000000000000004.
  return Array.from({ length: count }, (_, at) =>
    step < 1 ? (first + at) / Math.round(1 / step) : (first + at) * step,
  )
}
