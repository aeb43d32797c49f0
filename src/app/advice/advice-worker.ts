import { LIBRARY } from '../../functions/index.ts'
import { adviseSheet, adviseTarget } from '../../worksheet/advice/advise.ts'
import type { KitPiece } from '../../worksheet/advice/kit-suggestions.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { FullSheet } from '../../worksheet/renaming/full-sheet.ts'

/** What the page asks for: advice on a whole sheet, or on bringing one result to a value. */
export interface AdviceRequest {
  readonly worksheet: Worksheet
  readonly pieces: readonly KitPiece[]
  readonly target?: { readonly id: string; readonly text: string }
}

addEventListener('message', ({ data }: MessageEvent<AdviceRequest>) => {
  const { worksheet, pieces, target } = data
  const sheet = new FullSheet(worksheet, LIBRARY)
  // Limits of error are no part of a plan; computing them would only take time.
  sheet.engine.limitsBudget = 0
  postMessage(target ? adviseTarget(sheet, target.id, target.text, pieces) : adviseSheet(sheet, pieces))
})
