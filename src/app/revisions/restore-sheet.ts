import type { Worksheet } from '../../worksheet/index.ts'
import type { SheetSession } from '../session/sheet-session.ts'
import { revisionsWords as words } from './words.ts'

/** Puts an open sheet back to an earlier state. The present one becomes a revision first. */
export async function restoreSheet({ id, open, store, autosave }: SheetSession, worksheet: Worksheet): Promise<void> {
  await autosave.flush()
  if (autosave.isUnsaved) throw new Error(words.notSavedFirst)
  await store.saveRevision(id, { why: words.beforeRestore })
  await open.loadAllFunctions()
  if (!open.frozen.get()) open.sheet.become(worksheet)
  await autosave.flush()
}
