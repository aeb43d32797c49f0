import type { Worksheet } from '../../worksheet/schema/document.ts'
import { newId } from '../store/new-id.ts'
import type { Store } from '../store/types.ts'
import { originOf } from './origin.ts'
import { COPY_WORDS as WORDS } from './words.ts'

/** Saves a worksheet from elsewhere as a sheet of this browser, with how it came as a revision; gives its id. */
export async function saveReceived(store: Store, worksheet: Worksheet): Promise<string> {
  const id = newId()
  await store.save(id, worksheet)
  const origin = originOf(worksheet)
  if (origin) await store.importRevisions(id, [{ at: origin.at, shared: true, why: WORDS.received, worksheet }])
  return id
}
