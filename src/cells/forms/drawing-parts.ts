import { DRAWINGS } from '../../drawings/kinds/registry.ts'
import type { DrawingKind } from '../../worksheet/index.ts'

/** The inputs of a new drawing: the cells with the names of the inputs. */
export function inputsByName(kind: DrawingKind, cells: Iterable<string>): Record<string, string> {
  const names = new Set(cells)
  return Object.fromEntries(DRAWINGS[kind].inputs.flatMap(({ name }) => (names.has(name) ? [[name, name]] : [])))
}
