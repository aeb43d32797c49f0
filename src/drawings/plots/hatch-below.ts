import { type Box, type Point, point, type Segment, without } from '../canvas/geometry.ts'
import type { Grid } from './isolines.ts'

const SPACING = 8
const STEP = 3

/** Hatching over the part of a map whose values are below a level, interrupted around the given boxes. */
export function hatchBelow(grid: Grid, level: number, box: Box, around: readonly Box[]): readonly Segment[] {
  const width = box.right - box.left
  const height = box.bottom - box.top
  const below = ({ x, y }: Point): boolean => valueAt(grid, (x - box.left) / width, (box.bottom - y) / height) < level
  const strokes: Segment[] = []
  for (let start = SPACING / 2 - height; start < width; start += SPACING) {
    // Strokes rise to the right at 45°, starting at the lower or the left edge.
    const first = Math.max(0, -start)
    const last = Math.min(height, width - start)
    let from: Point | undefined
    let to: Point | undefined
    for (let along = first; ; along = Math.min(last, along + STEP)) {
      const here = point(box.left + start + along, box.bottom - along)
      if (below(here)) {
        from ??= here
        to = here
      }
      if (from && to && (along >= last || to !== here)) {
        strokes.push({ from, to })
        from = to = undefined
      }
      if (along >= last) break
    }
  }
  return strokes.flatMap((stroke) => without(stroke, around))
}

/** Bilinear interpolation at a point given in fractions from the lower left corner. */
function valueAt({ columns, rows, values }: Grid, x: number, y: number): number {
  const across = Math.min(columns - 1, Math.max(0, x * (columns - 1)))
  const up = Math.min(rows - 1, Math.max(0, y * (rows - 1)))
  const column = Math.min(columns - 2, Math.floor(across))
  const row = Math.min(rows - 2, Math.floor(up))
  const [u, v] = [across - column, up - row]
  const sample = (right: number, above: number) => values[(row + above) * columns + column + right] as number
  return (sample(0, 0) * (1 - u) + sample(1, 0) * u) * (1 - v) + (sample(0, 1) * (1 - u) + sample(1, 1) * u) * v
}
