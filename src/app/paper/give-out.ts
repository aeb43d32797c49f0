import { FILE_ENDING, fileName, saveText } from '../../storage/exchange/file.ts'
import { addressOf } from '../common/route.ts'
import { revisionText } from '../revisions/revision-text.ts'
import type { SheetSession } from '../session/sheet-session.ts'
import { basesFor } from '../templates/base-sheets.ts'
import { handOverPage } from './hand-over.ts'
import { printSheet } from './lay-out-for-print.ts'
import { codeFor } from './qr.ts'
import { simulateForPaper } from './simulated.ts'

/** The date, and the revision after pending edits have been saved. */
async function marks({ autosave, store, id }: SheetSession): Promise<{ at: Date; revision: string }> {
  await autosave.flush()
  return { at: new Date(), revision: await revisionText(store, id) }
}

/** Prints an open sheet as a job sheet, with a QR code where one fits. */
export async function printSession(session: SheetSession, working = false): Promise<void> {
  const { sheet } = session.open
  if (working) await simulateForPaper(sheet)
  await printSheet(sheet, {
    ...(await marks(session)),
    working,
    paged: true,
    code: await codeFor(sheet, { addressOf, bases: await basesFor(sheet.worksheet) }),
  })
}

/** Saves an open sheet as a page to hand over. Gives false where the user cancelled. */
export async function savePage(session: SheetSession, working: boolean): Promise<boolean> {
  const { sheet } = session.open
  if (working) await simulateForPaper(sheet)
  const page = await handOverPage(sheet, { ...(await marks(session)), working })
  const name = fileName(sheet.worksheet.title).slice(0, -FILE_ENDING.length)
  return saveText(`${name}.html`, page, 'text/html')
}
