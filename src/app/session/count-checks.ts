import type { CheckCounts } from '../../storage/store/types.ts'
import { idsOnExamples } from '../../worksheet/analysis/provenance.ts'
import type { Sheet } from '../../worksheet/editing/sheet.ts'

/** How many checks of a sheet are in each state; one that rests on an example, or is in error, waits for a figure. */
export function countChecks(sheet: Sheet): CheckCounts {
  const examples = idsOnExamples(sheet)
  const counts = { pass: 0, marginal: 0, fail: 0, waiting: 0 }
  for (const cell of sheet.cells) {
    if (cell.kind !== 'check') continue
    const state = examples.has(cell.id) ? 'waiting' : sheet.checkState(cell.id)
    counts[state === 'error' ? 'waiting' : state]++
  }
  return counts
}
