import type { RangeTable } from '../../worksheet/analysis/followed.ts'
import type { Axis } from '../plots/axes.ts'
import { axisUp } from './range-axes.ts'

/** The results at one figure of what is varied. */
export interface Sample {
  readonly figure: number
  readonly values: readonly (number | undefined)[]
}

/** The number of places computed at first between the ends of a range. */
const PLACES = 96
/** No more time than this, in ms, is spent on places: a result that searches may take as long for one as others for all. */
const LONGEST_MS = 250
/** No more places than these are computed, however much a curve oscillates. */
const MOST_PLACES = 4000
/** A curve may deviate from its chord by this share of its height: less than a pixel of a plot. */
const SMOOTH = 1 / 400
/** Places at equal distances would fall on the same point of every period of some curves. */
const UNEVEN = 0.35
const GOLDEN = (Math.sqrt(5) - 1) / 2

interface Placed extends Sample {
  readonly share: number
}

/**
 * The results between the values of a range and at them, at so many places that a curve is not drawn as straight lines:
 * the space between two places is halved while the middle deviates from the chord.
 */
export function sampled(table: RangeTable, x: Axis): readonly Sample[] {
  const [from, to] = [Math.min(...table.figures), Math.max(...table.figures)]
  const [left, right] = [x.place(from), x.place(to)]
  const shareOf = (figure: number): number => (right === left ? 0 : (x.place(figure) - left) / (right - left))
  const figureAt = (share: number): number => {
    const [start, end] = [x.place(x.from), x.place(x.to)]
    return x.at((left + share * (right - left) - start) / (end - start))
  }
  const placed = (share: number, figure = figureAt(share)): Placed => ({ share, figure, values: table.at(figure) })

  const own = table.figures
    .map((figure, at): Placed => {
      const values = table.followed.map(({ figures }) => figures[at])
      return { share: shareOf(figure), figure, values }
    })
    .filter(({ figure }, at) => table.figures.indexOf(figure) === at)
  const began = performance.now()
  const isOver = (): boolean => performance.now() - began > LONGEST_MS
  const unevenly = (at: number, count: number): Placed =>
    placed((at + 0.5 + UNEVEN * (((at * GOLDEN) % 1) * 2 - 1)) / count)
  // How long one takes says how many there is time for.
  const between = [unevenly(0, PLACES)]
  const count = Math.min(PLACES, Math.ceil(LONGEST_MS / Math.max(1e-3, performance.now() - began)))
  for (let at = 1; at < count && !isOver(); at++) between.push(unevenly(at, count))
  let places = [...own, ...between].sort((a, b) => a.share - b.share)
  const heights = table.followed.map((one, which) =>
    axisUp(
      one,
      [0, 1],
      places.flatMap(({ values }) => values[which] ?? []),
    ),
  )
  const bends = (a: Placed, middle: Placed, b: Placed): boolean =>
    heights.some((axis, which) => {
      const [first, half, last] = [a, middle, b].map(({ values }) => {
        const value = values[which]
        return value === undefined ? undefined : axis.place(value)
      })
      if (first === undefined || half === undefined || last === undefined)
        return (first === undefined) !== (last === undefined) || (first === undefined) !== (half === undefined)
      return Math.abs((first + last) / 2 - half) > SMOOTH
    })
  let open = places.slice(1).map((next, at) => [places[at] as Placed, next] as const)
  while (open.length > 0 && places.length < MOST_PLACES && !isOver()) {
    const next: (readonly [Placed, Placed])[] = []
    const added: Placed[] = []
    for (const [a, b] of open) {
      if (places.length + added.length >= MOST_PLACES || isOver()) break
      if (b.share - a.share < 1 / (PLACES * 64)) continue
      const middle = placed((a.share + b.share) / 2)
      added.push(middle)
      if (bends(a, middle, b)) next.push([a, middle], [middle, b])
    }
    places = [...places, ...added].sort((a, b) => a.share - b.share)
    open = next
  }
  return places
}
