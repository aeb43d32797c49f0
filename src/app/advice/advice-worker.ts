import { LIBRARY } from '../../functions/index.ts'
import { adviseSheet, adviseTarget } from '../../worksheet/advice/advise.ts'
import type { KitPiece } from '../../worksheet/advice/kit-suggestions.ts'
import { offersFor } from '../../worksheet/advice/offers.ts'
import type { PartLibrary } from '../../worksheet/compose/part-library.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { FullSheet } from '../../worksheet/renaming/full-sheet.ts'

/** What the page asks for: advice on a whole sheet, on bringing one result to a value, or which parts would help. */
export interface AdviceRequest {
  readonly worksheet: Worksheet
  readonly pieces: readonly KitPiece[]
  readonly target?: { readonly id: string; readonly text: string }
  /** The parts there are: which of them would help is asked. */
  readonly library?: PartLibrary
}

addEventListener('message', ({ data }: MessageEvent<AdviceRequest>) => {
  const { worksheet, pieces, target, library } = data
  const sheet = new FullSheet(worksheet, LIBRARY)
  // Limits of error are no part of a plan; computing them would only take time.
  sheet.engine.limitsBudget = 0
  if (library) postMessage(offersFor(library, sheet))
  else postMessage(target ? adviseTarget(sheet, target.id, target.text, pieces) : adviseSheet(sheet, pieces))
})
