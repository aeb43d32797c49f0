import { addressOf } from '../common/route.ts'
import { revisionText } from '../revisions/revision-text.ts'
import type { SheetSession } from '../session/sheet-session.ts'
import { basesFor } from '../templates/base-sheets.ts'
import { type Drawers, drawersOf } from './job-sheet.ts'
import { layOutForPrint } from './lay-out-for-print.ts'
import { codeFor, type SheetCode } from './qr.ts'

/** Pause after a change until what a print needs is fetched again. */
const PAUSE_MS = 1500

/**
 * Prints from the browser's own menu what the button prints: the job sheet is laid out when printing begins, from what
 * was fetched before. Gives a function that ends this.
 */
export function printFromMenu(held: SheetSession): () => void {
  const { open, store, id } = held
  let ready: { readonly drawers: Drawers; readonly revision: string; readonly code: SheetCode | undefined } | undefined
  let waits: ReturnType<typeof setTimeout> | undefined
  const fetch = async (): Promise<void> => {
    try {
      const [drawers, revision, code] = await Promise.all([
        drawersOf(open.sheet),
        revisionText(store, id).catch(() => ''),
        basesFor(open.sheet.worksheet).then((bases) => codeFor(open.sheet, { addressOf, bases })),
      ])
      ready = { drawers, revision, code }
    } catch {
      // Without a network the page is printed as it is.
    }
  }
  const fetchAgain = (): void => {
    clearTimeout(waits)
    waits = setTimeout(() => void fetch(), PAUSE_MS)
  }
  const begin = (): void => {
    if (ready) layOutForPrint(open.sheet, { at: new Date(), ...ready, paged: true }, ready.drawers)
  }
  const stop = open.sheet.watch(fetchAgain)
  addEventListener('beforeprint', begin)
  void fetch()
  return () => {
    stop()
    clearTimeout(waits)
    removeEventListener('beforeprint', begin)
  }
}
