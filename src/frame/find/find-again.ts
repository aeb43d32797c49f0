import type { Box, ChartArea, ChartPatch, Point } from '../areas/area.ts'
import { measureChart } from '../areas/chart.ts'
import type { LitPicture } from '../colour/light.ts'
import { FrameError } from '../problem.ts'
import { type Corners, turnedBy } from './four-corners.ts'
import { projection } from './projection.ts'

/** A smaller box than this, px, is no patch any more. */
const LEAST = 4
/** A chart that differs more than this on average, ΔE2000, is another one or lies another way. */
const MOST_DIFFERENT = 25
/** The best way for a chart to lie must be so much better than the next. */
const BETTER = 0.7

/** The patches of a chart where they lie once its outline lies elsewhere; undefined where one has no space. */
function patchesAt(patches: readonly ChartPatch[], from: Corners, to: Corners): ChartPatch[] | undefined {
  const map = projection(from, to)
  const moved = patches.map((patch) => ({ ...patch, box: boxWithin(patch.box, map) }))
  return moved.every(({ box }) => box !== undefined) ? (moved as ChartPatch[]) : undefined
}

/** The upright box within what a box becomes. */
function boxWithin([x, y, w, h]: Box, map: (point: Point) => Point): Box | undefined {
  const corners = (
    [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ] as const
  ).map(map)
  const [xs, ys] = [0, 1].map((i) => corners.map((one) => one[i] as number).sort((a, b) => a - b)) as [
    number[],
    number[],
  ]
  const [left, right, top, bottom] = [xs[1], xs[2], ys[1], ys[2]] as [number, number, number, number]
  return right - left >= LEAST && bottom - top >= LEAST ? [left, top, right - left, bottom - top] : undefined
}

/**
 * A chart’s patches in another picture, where its outline was found: of the four ways it may lie the one whose patches are
 * nearest to their references. Undefined where none is clearly nearer than the others.
 */
export function chartAgain(
  chart: ChartArea,
  from: Corners,
  to: Corners,
  picture: LitPicture,
): { patches: readonly ChartPatch[]; outline: Corners } | undefined {
  const ways = [0, 1, 2, 3].flatMap((by) => {
    const outline = turnedBy(to, by)
    const patches = patchesAt(chart.patches, from, outline)
    const mean = patches && differenceOf({ ...chart, patches }, picture)
    return patches && mean !== undefined ? [{ patches, outline, mean }] : []
  })
  const [best, next] = ways.sort((one, other) => one.mean - other.mean)
  if (!best || best.mean > MOST_DIFFERENT || (next && best.mean > BETTER * next.mean)) return undefined
  return best
}

function differenceOf(chart: ChartArea, picture: LitPicture): number | undefined {
  try {
    return measureChart(chart, picture).mean
  } catch (error) {
    if (error instanceof FrameError) return undefined
    throw error
  }
}
