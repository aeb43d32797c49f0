import type { Cell } from '../../worksheet/index.ts'

/** The cells selected in Build, by id, and the one a selection by keys began at. */
export interface Picks {
  readonly ids: ReadonlySet<string>
  readonly anchor?: string | undefined
}

export const NO_PICKS: Picks = { ids: new Set() }

/** One cell more, or one less. */
export function toggled({ ids }: Picks, id: string): Picks {
  const next = new Set(ids)
  if (!next.delete(id)) next.add(id)
  return { ids: next, anchor: id }
}

/** All cells from where the selection began to this one. */
export function upTo(cells: readonly Cell[], { anchor }: Picks, from: string, to: string): Picks {
  const begun = anchor ?? from
  const ends = [begun, to].map((id) => cells.findIndex((cell) => cell.id === id)).sort((a, b) => a - b)
  const [first, last] = ends as [number, number]
  return { ids: new Set(cells.slice(Math.max(0, first), last + 1).map(({ id }) => id)), anchor: begun }
}

/** What is left of a selection after cells have gone. */
export function still(cells: readonly Cell[], picks: Picks): Picks {
  if (picks.ids.size === 0) return picks
  const there = new Set(cells.map(({ id }) => id))
  const ids = [...picks.ids].filter((id) => there.has(id))
  return ids.length === picks.ids.size ? picks : { ids: new Set(ids), anchor: picks.anchor }
}

/** The cells selected, in the order of the sheet. */
export const picked = (cells: readonly Cell[], { ids }: Picks): Cell[] => cells.filter(({ id }) => ids.has(id))
