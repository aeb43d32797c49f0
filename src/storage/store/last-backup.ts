import type { Store } from './types.ts'

const BACKUP = 'last backup'

const isRecord = (data: unknown): data is Record<string, unknown> => typeof data === 'object' && data !== null

/** When the last backup was made here, in milliseconds since 1970. */
export async function lastBackup(store: Store): Promise<number | undefined> {
  const found = await store.setting(BACKUP)
  return isRecord(found) && typeof found.at === 'number' && Number.isFinite(found.at) ? found.at : undefined
}

/** Stores that a backup was made now. */
export const rememberBackup = (store: Store): Promise<void> => store.saveSetting(BACKUP, { at: Date.now() })

/** How long saved changes may go without a backup before it is recalled. */
const BACKUP_DUE_MS = 14 * 24 * 3_600_000

/**
 * The sheets changed since the last backup, where the oldest change among them, or the backup, is long enough ago to
 * say so; 0 else. A clock set back makes no reminder.
 */
export function sheetsWithoutBackup(changed: readonly number[], backup: number | undefined, now: number): number {
  const since = changed.filter((at) => backup === undefined || at > backup)
  const oldest = backup ?? Math.min(...since)
  return since.length > 0 && now - oldest >= BACKUP_DUE_MS ? since.length : 0
}
