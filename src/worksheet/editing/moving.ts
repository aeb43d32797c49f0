import type { Change } from '../document/change.ts'
import type { Cell } from '../schema/document.ts'

/**
 * Cells brought together, in the order they have, into the gap before the cell that is now at `gap`; the length of
 * the list is the gap at its end. Undefined where all are there already.
 */
export function movedInto(cells: readonly Cell[], ids: ReadonlySet<string>, gap: number): Change | undefined {
  const at = cells.flatMap(({ id }, i) => (ids.has(id) ? [i] : []))
  const [first, last] = [at[0], at.at(-1)]
  if (first === undefined || last === undefined) return undefined
  const together = last - first === at.length - 1
  if (together && gap >= first && gap <= last + 1) return undefined
  const idAt = (i: number): string => (cells[i] as Cell).id
  const above = at.filter((i) => i < gap).reverse()
  const below = at.filter((i) => i >= gap)
  const changes: Change[] = [
    ...above.map((i, n): Change => ({ do: 'move', id: idAt(i), to: gap - 1 - n })),
    ...below.map((i, n): Change => ({ do: 'move', id: idAt(i), to: gap + n })),
  ]
  return changes.length === 1 ? (changes[0] as Change) : { do: 'several', changes }
}

/** Cells moved past the one above them, or the one below; undefined where there is none. */
export function movedBy(cells: readonly Cell[], ids: ReadonlySet<string>, by: -1 | 1): Change | undefined {
  const at = cells.flatMap(({ id }, i) => (ids.has(id) ? [i] : []))
  const [first, last] = [at[0], at.at(-1)]
  if (first === undefined || last === undefined) return undefined
  const gap = by < 0 ? first - 1 : last + 2
  return gap < 0 || gap > cells.length ? undefined : movedInto(cells, ids, gap)
}
