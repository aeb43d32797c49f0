import { DRAWINGS } from '../../drawings/kinds/registry.ts'
import type { DrawingKind } from '../../worksheet/index.ts'

/** Fed at first from the cells that bear the names of its inputs. */
export function fedByName(kind: DrawingKind, cells: Iterable<string>): Record<string, string> {
  const names = new Set(cells)
  return Object.fromEntries(DRAWINGS[kind].inputs.flatMap(({ name }) => (names.has(name) ? [[name, name]] : [])))
}
