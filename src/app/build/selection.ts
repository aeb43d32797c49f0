import type { Cell } from '../../worksheet/index.ts'

/** The selected cells by id, and the cell at which a selection by keys began. */
export interface Selection {
  readonly ids: ReadonlySet<string>
  readonly anchor?: string | undefined
}

export const NO_SELECTION: Selection = { ids: new Set() }

/** The selection with one cell added, or removed where it was selected. */
export function toggled({ ids }: Selection, id: string): Selection {
  const next = new Set(ids)
  if (!next.delete(id)) next.add(id)
  return { ids: next, anchor: id }
}

/** All cells from the start of the selection to another cell. */
export function upTo(cells: readonly Cell[], { anchor }: Selection, from: string, to: string): Selection {
  const begun = anchor ?? from
  const ends = [begun, to].map((id) => cells.findIndex((cell) => cell.id === id)).sort((a, b) => a - b)
  const [first, last] = ends as [number, number]
  return { ids: new Set(cells.slice(Math.max(0, first), last + 1).map(({ id }) => id)), anchor: begun }
}

/** The selection without cells that no longer exist. */
export function still(cells: readonly Cell[], picks: Selection): Selection {
  if (picks.ids.size === 0) return picks
  const there = new Set(cells.map(({ id }) => id))
  const ids = [...picks.ids].filter((id) => there.has(id))
  return ids.length === picks.ids.size ? picks : { ids: new Set(ids), anchor: picks.anchor }
}

/** The selected cells in the order of the sheet. */
export const picked = (cells: readonly Cell[], { ids }: Selection): Cell[] => cells.filter(({ id }) => ids.has(id))
