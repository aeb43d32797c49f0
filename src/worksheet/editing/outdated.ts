import { readAnyGiven } from '../document/kit-given.ts'
import { rowsMark } from '../document/rows-mark.ts'
import type { EngineView, Layout } from '../engine/engine-view.ts'
import type { Cell, NamedCell, Result } from '../schema/document.ts'

/** Measured values whose figures changed since they were read. */
export interface Outdated {
  /** By the id of the measured result: the names of what changed since. */
  readonly results: ReadonlyMap<string, readonly string[]>
  /** By the id of a cell: the outdated results it is computed from. */
  readonly resting: ReadonlyMap<string, readonly string[]>
}

const NONE: Outdated = { results: new Map(), resting: new Map() }
/** Nothing is measured at all, so that a change of a given leaves it so. */
export const NOTHING_MEASURED: Outdated = { results: new Map(), resting: new Map() }

const isMeasured = (cell: Cell): cell is Result => cell.kind === 'result' && (cell.measured ?? '').trim() !== ''

/** What is filled in, as it is compared later; undefined for what is computed. */
function filledIn(cell: NamedCell): string | undefined {
  if (cell.kind === 'given') return cell.value
  if (cell.kind === 'table') return rowsMark(cell.rows)
  return isMeasured(cell) ? cell.measured : undefined
}

/** What a cell is computed from, by name: the givens, tables and measured results beneath it, as filled in. */
export function figuresBeneath(view: EngineView, id: string): Record<string, string> {
  const { order, needs } = view.layout
  const at = order.findIndex(({ cell }) => cell.id === id)
  const found: Record<string, string> = {}
  const seen = new Set<number>()
  const visit = (position: number): void => {
    for (const need of needs[position] ?? []) {
      if (seen.has(need)) continue
      seen.add(need)
      const cell = order[need]?.cell
      const filled = cell && filledIn(cell)
      if (cell && filled !== undefined) found[cell.name] = filled
      else visit(need)
    }
  }
  if (at >= 0) visit(at)
  return found
}

/** When a value was measured, in ISO 8601, and the initials of who measured it. */
export interface Reading {
  readonly when?: string
  readonly by?: string
}

/** A result's measured value with the figures it was read under. */
export function withFigures(view: EngineView, cell: Result, { when, by }: Reading = {}): Result {
  const { measured_under: _, ...rest } = cell
  const { measured = '' } = cell
  if (measured.trim() === '') return rest as Result
  return {
    ...rest,
    measured_under: {
      text: measured,
      figures: figuresBeneath(view, cell.id),
      ...(when ? { when } : {}),
      ...(by ? { by } : {}),
    },
  } as Result
}

/** Finds the measured values of some cells that are older than a change of what they depend on. */
export function outdatedIn(view: EngineView, cells: readonly Cell[]): Outdated {
  // Looked for at every key: most sheets have none.
  const measured = cells.filter(
    (cell): cell is Result =>
      cell.kind === 'result' && cell.measured_under !== undefined && isMeasured(cell) && under(cell) !== undefined,
  )
  // What was typed in a file or a terminal says nothing of what it was read under; it is measured all the same.
  if (measured.length === 0) return cells.some(isMeasured) ? NONE : NOTHING_MEASURED
  const { layout } = view
  const named = new Map(layout.order.map(({ cell }) => [cell.name, cell]))
  const results = new Map<string, readonly string[]>()
  for (const cell of measured) {
    const changed = Object.entries(under(cell)?.figures ?? {}).flatMap(([name, text]) => {
      const now = named.get(name)
      return now && !isSame(now, text) ? [name] : []
    })
    if (changed.length > 0) results.set(cell.id, changed)
  }
  return results.size === 0 ? NONE : { results, resting: restingOn(layout, results) }
}

/** The figures a measured value was read under, while it is the same text. */
const under = ({ measured, measured_under }: Result): NonNullable<Result['measured_under']> | undefined =>
  measured_under?.text === measured ? measured_under : undefined

/** Whether a figure is what it was; another spelling of the same value changes nothing. */
function isSame(cell: NamedCell, text: string): boolean {
  const now = filledIn(cell)
  if (now === undefined || now === text) return now === text
  if (cell.kind !== 'given') return false
  const [before, after] = [{ ...cell, value: text }, cell].map((one) => readAnyGiven(one).value)
  return before !== undefined && JSON.stringify(before) === JSON.stringify(after)
}

/** Follows outdated values to what is computed from them; a later measured value rests on its own reading. */
function restingOn({ order, dependants }: Layout, results: ReadonlyMap<string, unknown>): Map<string, string[]> {
  const resting = new Map<string, string[]>()
  for (const [start, { cell }] of order.entries()) {
    if (!results.has(cell.id)) continue
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
