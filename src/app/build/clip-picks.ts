import type { Cell } from '../../worksheet/index.ts'

/** The cells selected in Build, by id, and the one a selection by keys began at. */
export interface Selection {
  readonly ids: ReadonlySet<string>
  readonly anchor?: string | undefined
}

export const NO_SELECTION: Selection = { ids: new Set() }

/** One cell more, or one less. */
export function toggled({ ids }: Selection, id: string): Selection {
  const next = new Set(ids)
  if (!next.delete(id)) next.add(id)
  return { ids: next, anchor: id }
}

/** All cells from where the selection began to this one. */
export function upTo(cells: readonly Cell[], { anchor }: Selection, from: string, to: string): Selection {
  const begun = anchor ?? from
  const ends = [begun, to].map((id) => cells.findIndex((cell) => cell.id === id)).sort((a, b) => a - b)
  const [first, last] = ends as [number, number]
  return { ids: new Set(cells.slice(Math.max(0, first), last + 1).map(({ id }) => id)), anchor: begun }
}

/** What is left of a selection after cells have gone. */
export function still(cells: readonly Cell[], picks: Selection): Selection {
  if (picks.ids.size === 0) return picks
  const there = new Set(cells.map(({ id }) => id))
  const ids = [...picks.ids].filter((id) => there.has(id))
  return ids.length === picks.ids.size ? picks : { ids: new Set(ids), anchor: picks.anchor }
}

/** The cells selected, in the order of the sheet. */
export const picked = (cells: readonly Cell[], { ids }: Selection): Cell[] => cells.filter(({ id }) => ids.has(id))
