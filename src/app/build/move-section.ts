import { partsOf } from '../../worksheet/compose/join-place.ts'
import type { Cell, Change } from '../../worksheet/index.ts'

/** Moves a whole section above the previous one or below the next; undefined where there is none. */
export function sectionMoved(cells: readonly Cell[], heading: string, by: -1 | 1): Change | undefined {
  const parts = partsOf(cells)
  const at = parts.findIndex((part) => part.heading?.id === heading)
  const above = by < 0 ? at - 1 : at
  const [first, second] = [parts[above], parts[above + 1]]
  // Cells before the first heading are not a section.
  if (at < 0 || !first?.heading || !second) return undefined
  const changes = cells
    .slice(second.from, second.to)
    .map(({ id }, n): Change => ({ do: 'move', id, to: first.from + n }))
  return { do: 'several', changes }
}
