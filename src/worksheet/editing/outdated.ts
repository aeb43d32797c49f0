import { readAnyGiven } from '../document/kit-given.ts'
import { filledIn, isMeasured, readUnder } from '../document/reading.ts'
import type { EngineView, Layout } from '../engine/engine-view.ts'
import type { Cell, NamedCell } from '../schema/document.ts'

/** Readings that are older than a change of the figures they were taken under. */
export interface Outdated {
  /** By the id of the reading's cell: the names of what changed since. */
  readonly readings: ReadonlyMap<string, readonly string[]>
  /** By the id of a cell: the outdated readings it is computed from. */
  readonly resting: ReadonlyMap<string, readonly string[]>
  /** Whether any result is measured. */
  readonly hasMeasured: boolean
}

/** Nothing is read at all, so that a change of a given leaves it so. */
export const NOTHING_READ: Outdated = { readings: new Map(), resting: new Map(), hasMeasured: false }

/** Finds the readings of some cells that are older than a change of what they depend on. */
export function outdatedIn({ layout }: EngineView, cells: readonly Cell[]): Outdated {
  // Looked for at every key: most sheets have none. What was typed in a file or a terminal says nothing of what it was read under.
  const read = cells.filter((cell) => readUnder(cell))
  const hasMeasured = cells.some(isMeasured)
  if (read.length === 0 && !hasMeasured) return NOTHING_READ
  const named = new Map(layout.order.map(({ cell }) => [cell.name, cell]))
  const readings = new Map<string, readonly string[]>()
  for (const cell of read) {
    const changed = Object.entries(readUnder(cell)?.figures ?? {}).flatMap(([name, text]) => {
      const now = named.get(name)
      return now && !isSame(now, text) ? [name] : []
    })
    if (changed.length > 0) readings.set(cell.id, changed)
  }
  return { readings, resting: restingOn(layout, readings), hasMeasured }
}

/** Whether a figure is what it was; another spelling of the same value changes nothing. */
function isSame(cell: NamedCell, text: string): boolean {
  const now = filledIn(cell)
  if (now === undefined || now === text) return now === text
  if (cell.kind !== 'given') return false
  const [before, after] = [{ ...cell, value: text }, cell].map((one) => readAnyGiven(one).value)
  return before !== undefined && JSON.stringify(before) === JSON.stringify(after)
}

/** Follows outdated values to what is computed from them; a later measured value rests on its own reading. */
function restingOn({ order, dependants }: Layout, readings: ReadonlyMap<string, unknown>): Map<string, string[]> {
  const resting = new Map<string, string[]>()
  for (const [start, { cell }] of order.entries()) {
    if (!readings.has(cell.id)) continue
    const seen = new Set<number>()
    const visit = (position: number): void => {
      for (const next of dependants[position] ?? []) {
        const there = order[next]?.cell
        if (!there || seen.has(next) || isMeasured(there)) continue
        seen.add(next)
        resting.set(there.id, [...(resting.get(there.id) ?? []), cell.name])
        visit(next)
      }
    }
    visit(start)
  }
  return resting
}
