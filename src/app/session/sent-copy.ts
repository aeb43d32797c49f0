import { type Origin, originOf, withoutOrigin } from '../../storage/exchange/origin.ts'
import { newId } from '../../storage/store/new-id.ts'
import { now } from '../../storage/store/summary.ts'
import { STORAGE_WORDS } from '../../storage/words.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import type { SheetSession } from './sheet-session.ts'

/** What each session last sent, and the origin it was given: sent again unchanged, it is the same copy. */
const sent = new WeakMap<SheetSession, { readonly worksheet: Worksheet; readonly origin: Origin }>()

/** Saves what is on the screen as another sheet; gives its id. */
export async function saveCopyOf({ open, store }: SheetSession): Promise<string> {
  const { worksheet } = open.sheet
  const id = newId()
  await store.save(id, { ...withoutOrigin(worksheet), title: `${worksheet.title}, copy` })
  return id
}

/** Where a copy sent now comes from. A sheet that came as a copy itself keeps the origin it has. */
export function originOfSent(session: SheetSession): Origin {
  const { worksheet } = session.open.sheet
  const last = sent.get(session)
  if (last?.worksheet === worksheet) return last.origin
  const origin = originOf(worksheet) ?? { sheet: session.id, at: now() }
  sent.set(session, { worksheet, origin })
  return origin
}

/** Saves the sheet as it is sent now as a revision, with which the copy is compared when it comes back. */
export async function rememberSent(session: SheetSession): Promise<void> {
  const { sheet, at } = originOfSent(session)
  if (sheet !== session.id) return
  const { worksheet } = session.open.sheet
  if (session.autosave.saveState.get().state === 'untouched') session.saveAgain()
  await session.autosave.flush()
  await session.store.importRevisions(session.id, [{ at, shared: true, why: STORAGE_WORDS.shared, worksheet }])
}
