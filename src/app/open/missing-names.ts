import type { Check, Sheet } from '../../worksheet/index.ts'

/** The names of the givens that the condition of a check still needs. */
export function missingNames(sheet: Sheet, { id }: Check): readonly string[] {
  const outcome = sheet.outcome(id)
  return outcome.state === 'waiting' ? outcome.on : []
}
