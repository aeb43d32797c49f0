import { contours } from 'd3-contour'
import { type Point, point } from '../canvas/geometry.ts'

/** Values over a rectangle, row by row from the lower left; the outermost stand on its edges. */
export interface Grid {
  readonly columns: number
  readonly rows: number
  readonly values: readonly number[]
}

/**
 * Where the values pass a level: runs of points in shares of the rectangle, (0, 0) its lower left corner. A run that
 * ends where it began is a closed line.
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

/** An area's outline runs along the edges of the rectangle too, half a cell outside; only what lies within is isoline. */
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
/** More lines than this would run into one another. */
const MOST_LINES = 9

/** Apart from one another, in stops: a tenth where that makes a fair number of lines, else finer or coarser. */
export function isolineStep(spread: number): number {
  return STEPS.find((step) => spread / step <= MOST_LINES) ?? 20
}

/** The levels between two values at whole steps. */
export function levelsBetween(least: number, greatest: number, step: number): readonly number[] {
  const first = Math.ceil(least / step + 1e-9)
  const count = Math.max(0, Math.floor(greatest / step - 1e-9) - first + 1)
  // Dividing by a whole number keeps 3 × 0.1 at 0.3.
  return Array.from({ length: count }, (_, at) =>
    step < 1 ? (first + at) / Math.round(1 / step) : (first + at) * step,
  )
}
