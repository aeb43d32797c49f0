import { kitIn, takeKitIn, takePieces } from '../../kit/kit-files.ts'
import { StudioTemplates, studioSetIn } from '../../kit/studio-templates.ts'
import { mergeBackup, mergeText, newSheetsIn } from '../../storage/exchange/backup.ts'
import { backupIn, openFile } from '../../storage/exchange/file.ts'
import { homeOf } from '../../storage/exchange/home.ts'
import { saveReceived } from '../../storage/exchange/save-received.ts'
import { BACKUP_WORDS, EXCHANGE_WORDS } from '../../storage/exchange/words.ts'
import type { Store } from '../../storage/store/types.ts'
import type { Worksheet } from '../../worksheet/index.ts'

/** What came of opening files: the sheets saved from them, and what to say. */
export interface Opened {
  readonly ids: readonly string[]
  readonly said: readonly string[]
  readonly failed: boolean
  /** The one worksheet opened, where it is a copy of a sheet that is here: nothing is saved of it yet. */
  readonly copy?: Worksheet
  /** Why the last that failed did. */
  readonly error?: unknown
}

/** Asks the user; false: no. */
export type Ask = (question: string) => Promise<boolean>

/** More sheets than this come in only when the user agrees. */
const MOST_UNASKED = 20

const sentence = (message: string): string => message.replace(/\.?$/, '.')

/** Saves a copy of each worksheet in the files, and what is missing of each backup; a bad file stops no other. */
export async function openFiles(store: Store, files: readonly File[], ask: Ask): Promise<Opened> {
  const ids: string[] = []
  const said: string[] = []
  let failed = false
  let last: unknown
  if (files.length > MOST_UNASKED && !(await ask(EXCHANGE_WORDS.manyFiles(files.length)))) return { ids, said, failed }
  for (const file of files) {
    try {
      const backup = await backupIn(file)
      if (backup !== undefined) {
        const { sheets, fresh } = await newSheetsIn(store, backup)
        if (fresh > MOST_UNASKED && !(await ask(BACKUP_WORDS.manyInBackup(sheets, fresh)))) continue
        said.push(mergeText(await mergeBackup(store, backup)), await takeKitIn(store, backup))
        continue
      }
      const set = await studioSetIn(file)
      if (set) {
        await new StudioTemplates(store).take(set.templates)
        said.push(EXCHANGE_WORDS.studioSetTaken(set.templates.length), await takePieces(store, set.kit))
        continue
      }
      const kit = await kitIn(file)
      if (kit) {
        said.push(await takePieces(store, kit))
        continue
      }
      const worksheet = await openFile(file)
      if (files.length === 1 && (await homeOf(store, worksheet))) return { ids, said, failed, copy: worksheet }
      ids.push(await saveReceived(store, worksheet))
    } catch (error) {
      failed = true
      last = error
      said.push(sentence((error as Error).message))
    }
  }
  if (ids.length > 1 || (ids.length === 1 && said.length > 0)) said.unshift(EXCHANGE_WORDS.filesCameIn(ids.length))
  if (failed) said.push(EXCHANGE_WORDS.yoursUnchanged)
  return { ids, said: said.filter(Boolean), failed, error: last }
}
