import type { Point } from '../areas/area.ts'
import { type Coarse, levelOf } from './coarse.ts'

/** A card that lies clear in the picture covers at least and at most so much of it. */
const LEAST_SHARE = 0.02
const MOST_SHARE = 0.95
/** Of the picture’s border a card that is wholly in it covers next to nothing. */
const MOST_BORDER = 0.02
/** Another thing as large as this share of the card could be the card as well. */
const MOST_OTHER = 0.35

/**
 * The convex outline, in pixels of the picture, of the one thing in it that is brighter or darker than its ground.
 * Undefined where there is none, where it reaches out of the picture, or where two could be meant.
 */
export function outlineIn(coarse: Coarse): readonly Point[] | undefined {
  const level = levelOf(coarse)
  if (level === undefined) return undefined
  const { width, height, values, step } = coarse
  const border = [...borderOf(width, height)]
  const bright = border.filter((at) => (values[at] as number) > level).length / border.length
  const isBright = bright < 0.5
  if ((isBright ? bright : 1 - bright) > MOST_BORDER) return undefined
  const inside = Uint8Array.from(values, (value) => (value > level === isBright ? 1 : 0))
  const [card, other] = componentsOf(inside, width, height)
  if (!card) return undefined
  const hull = hullOf(card.flatMap((at) => cornersOf(at, width)))
  const area = areaOf(hull)
  if (area < LEAST_SHARE * width * height || area > MOST_SHARE * width * height) return undefined
  // What lies within the outline belongs to it, such as the patches of a chart.
  const outside = other?.some((at) => !isWithin([(at % width) + 0.5, Math.floor(at / width) + 0.5], hull))
  if (other && outside && other.length > MOST_OTHER * card.length) return undefined
  return hull.map(([x, y]) => [x * step, y * step])
}

function* borderOf(width: number, height: number): Generator<number> {
  for (let x = 0; x < width; x++) {
    yield x
    yield (height - 1) * width + x
  }
  for (let y = 1; y < height - 1; y++) {
    yield y * width
    yield y * width + width - 1
  }
}

/** The two largest groups of cells that touch by their sides, the larger first. */
function componentsOf(inside: Uint8Array, width: number, height: number): readonly (readonly number[])[] {
  const seen = new Uint8Array(inside.length)
  let largest: number[] = []
  let second: number[] = []
  for (let start = 0; start < inside.length; start++) {
    if (!inside[start] || seen[start]) continue
    const group = [start]
    seen[start] = 1
    for (let next = 0; next < group.length; next++) {
      const at = group[next] as number
      const x = at % width
      const neighbours = [
        ...(x > 0 ? [at - 1] : []),
        ...(x < width - 1 ? [at + 1] : []),
        ...(at >= width ? [at - width] : []),
        ...(at < width * (height - 1) ? [at + width] : []),
      ]
      for (const one of neighbours)
        if (inside[one] && !seen[one]) {
          seen[one] = 1
          group.push(one)
        }
    }
    if (group.length > largest.length) [largest, second] = [group, largest]
    else if (group.length > second.length) second = group
  }
  return [largest, second].filter((group) => group.length > 0)
}

const cornersOf = (at: number, width: number): Point[] => {
  const [x, y] = [at % width, Math.floor(at / width)]
  return [
    [x, y],
    [x + 1, y],
    [x, y + 1],
    [x + 1, y + 1],
  ]
}

const turn = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)

/** The convex hull, clockwise as seen with y down (Andrew’s monotone chain, 1979). */
function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort(([x, y], [u, v]) => x - u || y - v)
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = []
    for (const one of list) {
      while (chain.length > 1 && turn(chain.at(-2) as Point, chain.at(-1) as Point, one) <= 0) chain.pop()
      chain.push(one)
    }
    return chain.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.toReversed())]
}

/** Twice-signed area by the shoelace formula, halved; never negative. */
export const areaOf = (points: readonly Point[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length] as Point
      return sum + x * v - u * y
    }, 0),
  ) / 2

const isWithin = (point: Point, hull: readonly Point[]): boolean =>
  hull.every((one, i) => turn(one, hull[(i + 1) % hull.length] as Point, point) >= -1e-9)
