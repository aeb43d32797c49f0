/** Where the cells that have no value lead back to, by position in dependency order. */
export interface Trace {
  /** For a cell in error, the cell the error started in; itself where it started there. */
  readonly origins: Int32Array
  /** For a waiting cell, what it waits for in the end; itself alone where it lacks only its own text. */
  readonly ends: readonly (readonly number[])[]
}

/** The most names stored of what a cell waits for; each of ten thousand cells could wait for thousands. */
const MOST_ENDS = 100

interface CellStates {
  readonly size: number
  readonly needs: readonly Int32Array[]
  isWaiting(i: number): boolean
  /** What a waiting cell waits for, of what it needs. */
  awaited(i: number): Int32Array
  isErroneous(i: number): boolean
  /** Whether the error of a cell started in the cell itself. */
  isFaulty(i: number): boolean
}

/** Follows all cells back at once, in one pass: chains share what their links have in common. */
export function trace({ size, needs, isWaiting, awaited, isErroneous, isFaulty }: CellStates): Trace {
  const origins = new Int32Array(size).fill(-1)
  const ends: (readonly number[])[] = new Array(size)
  for (let i = 0; i < size; i++) {
    const list = needs[i] as Int32Array
    if (isErroneous(i)) {
      const from = isFaulty(i) ? undefined : list.find((need) => isErroneous(need))
      origins[i] = from === undefined ? i : (origins[from] as number)
    } else if (isWaiting(i)) ends[i] = endsOf(i, awaited(i), ends)
  }
  return { origins, ends }
}

function endsOf(i: number, waiting: Int32Array, ends: readonly (readonly number[])[]): readonly number[] {
  if (waiting.length === 0) return [i]
  if (waiting.length === 1) return ends[waiting[0] as number] as readonly number[]
  const all = new Set<number>()
  for (const need of waiting) for (const end of ends[need] as readonly number[]) if (all.size < MOST_ENDS) all.add(end)
  return [...all]
}
