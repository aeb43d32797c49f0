import { calledIn, labelOf } from '../../cells/shared/cell-view.ts'
import { simulationsOf } from '../../cells/simulation/simulation-client.ts'
import { studyText, valueText } from '../../cells/simulation/study-text.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import { histogram } from '../../drawings/simulation/histogram.ts'
import type { Outcome, Result, Sheet } from '../../worksheet/index.ts'
import { USUAL_SEED } from '../../worksheet/simulation/draws.ts'

const TRIES = 50_000
/** A print is not delayed longer than this for simulations. */
const LONGEST_MS = 4000
const WIDTH = 360

const isNonlinear = (outcome: Outcome): boolean => outcome.state === 'value' && outcome.limits?.nonlinear === true

/** Simulates the results whose limits are not linear, where that has not been done yet; paper without it says the rest. */
export async function simulateForPaper(sheet: Sheet): Promise<void> {
  const client = simulationsOf(sheet)
  const { worksheet } = sheet
  const names = sheet.cells.flatMap((cell) =>
    cell.kind === 'result' && isNonlinear(sheet.outcome(cell.id)) && !client.latest(worksheet, cell.name)
      ? [cell.name]
      : [],
  )
  if (names.length === 0) return
  const release = client.hold()
  try {
    await client.ask(worksheet, { names, tries: TRIES, seed: USUAL_SEED, longest: LONGEST_MS }).answer
  } catch {
    // Without the network the thread's script may be missing: the limits are printed all the same.
  } finally {
    release()
  }
}

/** What was simulated of a result, below its working. */
export function simulatedOnPaper(sheet: Sheet, cell: Result, outcome: Outcome): Node[] {
  const study = simulationsOf(sheet).latest(sheet.worksheet, cell.name)
  if (!study || outcome.state !== 'value') return []
  const called = (name: string): string => calledIn(sheet, name)
  const figure = study.figures.get(cell.name)
  const drawn =
    figure && figure.sd > 0
      ? histogram(figure, { label: labelOf(cell), show: (value) => valueText(cell, outcome, value), width: WIDTH })
      : undefined
  return [
    ...studyText(cell, outcome, study, called).map((text) => element('p', { class: 'small' }, text)),
    ...(drawn ? [{ ...drawn, attributes: { ...drawn.attributes, width: WIDTH } }] : []),
  ]
}
