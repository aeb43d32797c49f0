import { DRAWINGS } from '../drawings/registry.ts'
import { type Cell, type DrawingKind, isNamed } from '../worksheet/index.ts'

/** Fed at first from the cells that bear the names of its inputs. */
export function fedByName(kind: DrawingKind, cells: readonly Cell[]): Record<string, string> {
  const names = new Set(cells.filter(isNamed).map(({ name }) => name))
  return Object.fromEntries(DRAWINGS[kind].inputs.flatMap(({ name }) => (names.has(name) ? [[name, name]] : [])))
}
