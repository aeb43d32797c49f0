import { detailsWords } from '../../cells/details/words.ts'
import { STATE_LABELS } from '../../cells/shared/words.ts'
import { idsOnExamples } from '../../worksheet/analysis/provenance.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { shownFigure } from '../../worksheet/document/shown-figure.ts'
import { type CheckSummary, Sheet, type Worksheet } from '../../worksheet/index.ts'
import { libraryFor } from '../common/library.ts'

/** A result or a check of a worksheet that is not open, as text. */
export interface ReceivedFigure {
  readonly label: string
  readonly text: string
}

/** What a worksheet that is not open computes: its checks in sum, and each result and check that it shows at first sight. */
export async function figuresOf(
  worksheet: Worksheet,
): Promise<{ readonly checkSummary: CheckSummary; readonly figures: readonly ReceivedFigure[] }> {
  const sheet = new Sheet(worksheet, await libraryFor(worksheet.cells))
  const onExamples = idsOnExamples(sheet)
  const figures = sheet.cells.flatMap((cell): readonly ReceivedFigure[] => {
    if (cell.kind === 'check') {
      const { state, message } = sheet.check(cell.id)
      if (state === 'error') return []
      const rests = onExamples.has(cell.id) && state !== 'waiting'
      const said = rests ? detailsWords.inExample(STATE_LABELS[state]) : STATE_LABELS[state]
      return [{ label: labelOf(cell), text: [said, message].filter(Boolean).join(': ') }]
    }
    if (cell.kind !== 'result' || cell.more_exact) return []
    const outcome = sheet.outcome(cell.id)
    if (outcome.state !== 'value') return []
    return [{ label: labelOf(cell), text: shownFigure(cell, outcome.shown).text }]
  })
  return { checkSummary: sheet.checkSummary, figures }
}
