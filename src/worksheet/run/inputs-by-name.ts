import { namesIn } from '../../language/index.ts'
import { RUN_INPUTS } from './inputs.ts'

/** What a run of a table is fed with at first: by the usual names of columns and cells. */
export function runFedByName(columns: Iterable<string>, cells: Iterable<string>): Record<string, string> {
  const inRow = new Set(columns)
  const inSheet = new Set(cells)
  const from: Record<string, string> = {}
  for (const { name, over, usually } of RUN_INPUTS) {
    const all = (names: ReadonlySet<string>) => (formula: string) =>
      namesIn(formula).every((one) => names.has(one.name))
    const found = (over === 'row' && usually.find(all(inRow))) || usually.find(all(inSheet))
    if (found) from[name] = found
  }
  return from
}
