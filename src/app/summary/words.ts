import { plural } from '../../units/plural.ts'
import type { CheckSummary } from '../../worksheet/index.ts'
import { stateTexts } from '../common/words.ts'

/** The checks of a section that is folded, counted by state; how many rows it has where none is a check. */
export function foldedText(summary: CheckSummary, rows: number): string {
  const states = stateTexts(summary)
  return states.length > 0 ? `Checks: ${states.join(', ')}.` : `${plural(rows, 'row')}, no checks.`
}
