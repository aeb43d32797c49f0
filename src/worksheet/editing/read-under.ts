import type { Change } from '../document/change.ts'
import { confirmed, filledIn, type ReadingCell, readIn, readUnder } from '../document/reading.ts'
import type { EngineView } from '../engine/engine-view.ts'
import type { Cell, NamedCell } from '../schema/document.ts'

/** When a value was measured, in ISO 8601, and the initials of who measured it. */
export interface Reading {
  readonly when?: string
  readonly by?: string
}

/** A change that reads something, with the figures it is read under: those the same change sets, and the others as they are. */
export function stamped(
  view: EngineView,
  cellOf: (id: string) => Cell | undefined,
  change: Change,
  reading: Reading,
): Change {
  const changes = change.do === 'several' ? change.changes : [change]
  const set = new Map(changes.flatMap((one) => (one.do === 'replace' ? [[one.cell.id, one.cell] as const] : [])))
  const next = changes.map((one) => {
    if (one.do !== 'replace' || !isReadAnew(cellOf(one.cell.id), one.cell)) return one
    return { ...one, cell: withFigures(view, one.cell as ReadingCell, reading, set) }
  })
  return change.do === 'several' ? { ...change, changes: next } : (next[0] as Change)
}

/** Whether another value is read, or the same is confirmed. */
function isReadAnew(was: Cell | undefined, next: Cell): boolean {
  if (was?.kind !== next.kind) return false
  const isConfirmed = readUnder(was) !== undefined && !('measured_under' in next)
  return readIn(was) !== readIn(next) || isConfirmed || isNowOwn(was, next)
}

/** An example's reading that becomes the user's own as it is. */
const isNowOwn = (was: Cell, next: Cell): boolean =>
  was.kind === 'given' && next.kind === 'given' && next.read_under !== undefined && was.from !== next.from

function withFigures<C extends ReadingCell>(
  view: EngineView,
  cell: C,
  { when, by }: Reading,
  set: ReadonlyMap<string, Cell>,
): C {
  const text = readIn(cell)
  if (text === undefined) return confirmed(cell)
  const figures = figuresUnder(view, cell, set)
  return { ...cell, measured_under: { text, figures, ...(when ? { when } : {}), ...(by ? { by } : {}) } }
}

/**
 * The figures a reading is taken under, by name, as filled in: of a result those beneath its formula, of other cells those
 * they list, or what these are computed from.
 */
function figuresUnder({ layout }: EngineView, of: ReadingCell, set: ReadonlyMap<string, Cell>): Record<string, string> {
  const { order, needs } = layout
  const found: Record<string, string> = {}
  const seen = new Set<number>()
  const visit = (position: number): void => {
    const there = order[position]?.cell
    if (!there || seen.has(position)) return
    seen.add(position)
    const cell = (set.get(there.id) as NamedCell | undefined) ?? there
    const filled = filledIn(cell)
    if (filled === undefined) needs[position]?.forEach(visit)
    else if (cell.id !== of.id) found[cell.name] = filled
  }
  const at = (is: (cell: NamedCell) => boolean): number => order.findIndex(({ cell }) => is(cell))
  if (of.kind === 'result') needs[at(({ id }) => id === of.id)]?.forEach(visit)
  else for (const name of of.read_under ?? []) visit(at((cell) => cell.name === name))
  return found
}
