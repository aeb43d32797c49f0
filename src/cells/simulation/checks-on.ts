import { downstreamOf } from '../../worksheet/engine/partial-recompute.ts'
import type { Check, Sheet } from '../../worksheet/index.ts'

/** The checks that use a cell, directly or through other cells. */
export function checksOn({ engine, cells }: Sheet, id: string): Check[] {
  const node = engine.node(id)
  if (!node) return []
  const reached = downstreamOf(engine.layout, [engine.positionOf(node)])
  return cells.filter((cell): cell is Check => {
    const check = cell.kind === 'check' ? engine.node(cell.id) : undefined
    return check !== undefined && reached[engine.positionOf(check)] === 1
  })
}
