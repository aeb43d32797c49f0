import { lastBackup, sheetsWithoutBackup } from '../../storage/store/last-backup.ts'
import type { Store, Summary } from '../../storage/store/types.ts'
import { STORAGE_WORDS as WORDS } from '../../storage/words.ts'
import { when } from '../common/words.ts'

/** What reminds of the backup, where one is due. */
export async function backupReminder(store: Store, sheets: readonly Summary[]): Promise<string> {
  const last = await lastBackup(store)
  const changed = sheets.map((sheet) => sheet.changed)
  const due = sheetsWithoutBackup(changed, last, Date.now())
  return due > 0 ? WORDS.backupDue(due, last === undefined ? undefined : when(new Date(last))) : ''
}
