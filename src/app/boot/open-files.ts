import { kitIn, takeKitIn, takePieces } from '../../kit/kit-files.ts'
import { mergeBackup, mergeText } from '../../storage/exchange/backup.ts'
import { backupIn, openFile } from '../../storage/exchange/file.ts'
import { newId } from '../../storage/store/store.ts'
import type { Store } from '../../storage/store/types.ts'

/** What came of opening files: the sheets kept from them, and what to say. */
export interface Opened {
  readonly ids: readonly string[]
  readonly said: readonly string[]
  readonly failed: boolean
  /** Why the last that failed did. */
  readonly error?: unknown
}

const sentence = (message: string): string => message.replace(/\.?$/, '.')

/** Keeps a copy of each worksheet in the files, and what is missing of each backup; a bad file keeps no other from coming in. */
export async function openFiles(store: Store, files: readonly File[]): Promise<Opened> {
  const ids: string[] = []
  const said: string[] = []
  let failed = false
  let last: unknown
  for (const file of files) {
    try {
      const backup = await backupIn(file)
      if (backup !== undefined) {
        said.push(mergeText(await mergeBackup(store, backup)), await takeKitIn(store, backup))
        continue
      }
      const kit = await kitIn(file)
      if (kit) {
        said.push(await takePieces(store, kit))
        continue
      }
      const id = newId()
      await store.save(id, await openFile(file))
      ids.push(id)
    } catch (error) {
      failed = true
      last = error
      said.push(sentence((error as Error).message))
    }
  }
  if (ids.length > 1 || (ids.length === 1 && said.length > 0))
    said.unshift(`${ids.length} ${ids.length === 1 ? 'sheet' : 'sheets'} came in.`)
  if (failed) said.push('Your own sheets are as they were.')
  return { ids, said: said.filter(Boolean), failed, error: last }
}
