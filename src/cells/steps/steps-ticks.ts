import { type Cell, type Change, type Sheet, type Steps, withMeasured } from '../../worksheet/index.ts'
import { stepsWords } from './words.ts'

type Step = Steps['steps'][number]

const untick = ({ done: _, taken: __, ...step }: Step): Step => step as Step

/** The list with one step ticked or unticked. */
export const ticked = (cell: Steps, at: number, done: boolean): Steps => ({
  ...cell,
  steps: cell.steps.map((step, i) => (i !== at ? step : done ? { ...step, done } : untick(step))),
})

/** The list with nothing ticked, for a new session. */
export const startedOver = (cell: Steps): Steps => ({ ...cell, steps: cell.steps.map(untick) })

/** How many of the steps are done: `3 of 8 done`. */
export function doneText(steps: readonly Step[]): string {
  const done = steps.filter((step) => step.done === true).length
  if (steps.length === 0) return stepsWords.noSteps
  return done === steps.length && done > 1 ? stepsWords.allDone(done) : stepsWords.done(done, steps.length)
}

/** The cells with a reading of one of the steps; what is locked stays as it is. */
function read(cell: Steps, sheet: Sheet): Cell[] {
  const names = new Set(cell.steps.flatMap(({ reading }) => reading ?? []))
  return [...names].flatMap((name) => {
    const one = sheet.named(name)
    const hasReading = one?.kind === 'given' ? one.value !== '' : one?.kind === 'result' && one.measured !== undefined
    return one && hasReading && one.locked !== true ? [one] : []
  })
}

/** Whether any step of the cell has a reading that can be taken in this sheet. */
export const hasReadings = (cell: Steps, sheet: Sheet): boolean => read(cell, sheet).length > 0

/** The change that clears every reading of the list. */
export const withoutReadings = (cell: Steps, sheet: Sheet): Change => ({
  do: 'several',
  changes: read(cell, sheet).map((one) => ({
    do: 'replace',
    cell: one.kind === 'result' ? withMeasured(one, '') : ({ ...one, value: '' } as Cell),
  })),
})
