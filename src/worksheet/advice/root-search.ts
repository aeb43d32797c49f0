import { bisect } from '../../units/index.ts'

/** How a goal stands at a value: from zero on it is met; undefined where it does not compute. */
export type Domain = (x: number) => number | undefined

/** A value at which a goal begins to be met, and on which side of it it is: 1 above, −1 below. */
export interface Edge {
  readonly x: number
  readonly side: -1 | 1
}

export interface ScanResult {
  readonly edges: readonly Edge[]
  /** The value at which the goal came nearest. */
  readonly best: { readonly x: number; readonly room: number } | undefined
}

const HALVINGS = 40
/** So near, as a share of it, an edge is sought; where trying is dear, coarser. */
const FINE = 1e-12
const GOLDEN = (Math.sqrt(5) - 1) / 2

const met = (room: number | undefined): boolean => room !== undefined && room >= 0

/** Halves the way between a value that meets the goal and one that does not; ends on the one that does. */
const tip = (room: Domain, within: number, without: number, fine: number): number =>
  bisect(
    (x) => met(room(x)),
    { passing: within, failing: without },
    { halvings: HALVINGS, tolerance: ({ passing }) => fine * Math.abs(passing) },
  ).passing

/** The top of a hump between two values, or the first value found on it that meets the goal. */
function top(room: Domain, from: number, to: number, rounds: number): { x: number; room: number } | undefined {
  let a = from
  let b = to
  let best: { x: number; room: number } | undefined
  const look = (x: number): number => {
    const found = room(x) ?? Number.NEGATIVE_INFINITY
    if (!best || found > best.room) best = { x, room: found }
    return found
  }
  let c = b - GOLDEN * (b - a)
  let d = a + GOLDEN * (b - a)
  let atC = look(c)
  let atD = look(d)
  for (let i = 0; i < rounds && !met(best?.room); i++)
    if (atC >= atD) {
      b = d
      d = c
      atD = atC
      c = b - GOLDEN * (b - a)
      atC = look(c)
    } else {
      a = c
      c = d
      atC = atD
      d = a + GOLDEN * (b - a)
      atD = look(d)
    }
  return best
}

/** Looks along a row of values for where a goal begins to be met; a hump between two of them is climbed. */
export function scan(room: Domain, row: readonly number[], fine = FINE): ScanResult {
  const climbs = fine > FINE ? 8 : 30
  const rooms = row.map(room)
  const edges: Edge[] = []
  let best: ScanResult['best']
  const note = (x: number, at: number | undefined): void => {
    if (at !== undefined && Number.isFinite(at) && (!best || at > best.room)) best = { x, room: at }
  }
  const x = (i: number): number => row[i] as number
  for (let i = 0; i < row.length; i++) {
    const here = rooms[i]
    note(x(i), here)
    if (i > 0 && met(here) !== met(rooms[i - 1]))
      edges.push(
        met(here) ? { x: tip(room, x(i), x(i - 1), fine), side: 1 } : { x: tip(room, x(i - 1), x(i), fine), side: -1 },
      )
    const before = rooms[i - 1]
    const after = rooms[i + 1]
    if (before === undefined || after === undefined || here === undefined || met(here)) continue
    if (here < before || here < after || met(before) || met(after) || !Number.isFinite(here)) continue
    const hump = top(room, x(i - 1), x(i + 1), climbs)
    note(hump?.x ?? 0, hump?.room)
    if (hump && met(hump.room))
      edges.push({ x: tip(room, hump.x, x(i - 1), fine), side: 1 }, { x: tip(room, hump.x, x(i + 1), fine), side: -1 })
  }
  return { edges, best }
}

/** Looks along a row of values for where a figure passes through nothing; a leap over it is none. */
export function crossings(figure: Domain, row: readonly number[], scale: number): number[] {
  const found: number[] = []
  let before: { x: number; y: number } | undefined
  for (const x of row) {
    const y = figure(x)
    if (y === undefined || !Number.isFinite(y)) {
      before = undefined
      continue
    }
    if (y === 0) found.push(x)
    else if (before && before.y !== 0 && Math.sign(before.y) !== Math.sign(y)) {
      const rising = y > 0
      const root = tip((at) => (rising ? figure(at) : -(figure(at) ?? Number.NaN)), x, before.x, FINE)
      if (Math.abs(figure(root) ?? scale) <= 1e-4 * scale) found.push(root)
    }
    before = { x, y }
  }
  return found
}

/** Values to look at: by equal ratios between two of one sign, else by equal steps; some others put in. */
export function row(from: number, to: number, points: number, others: readonly number[]): number[] {
  const ratio = from > 0 ? to / from : from < 0 && to < 0 ? to / from : 0
  const steps = Array.from({ length: points }, (_, i) => {
    const share = i / (points - 1)
    return ratio > 0 ? from * ratio ** share : from + (to - from) * share
  })
  return [...new Set([...steps, ...others])].filter((x) => x >= Math.min(from, ...others)).sort((a, b) => a - b)
}
