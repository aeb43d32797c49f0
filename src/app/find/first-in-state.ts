import { type CheckOutcome, isNamed, type Sheet } from '../../worksheet/index.ts'

/** The id of the first check in a state. For errors, the first cell of any kind whose error started there. */
export function firstInState(sheet: Sheet, state: CheckOutcome['state']): string | undefined {
  return sheet.cells.find((cell) => {
    if (cell.kind === 'check') return sheet.check(cell.id).state === state
    if (state !== 'error' || !isNamed(cell)) return false
    const outcome = sheet.outcome(cell.id)
    return outcome.state === 'error' && outcome.origin === undefined
  })?.id
}
