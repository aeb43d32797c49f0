import type { Store } from './types.ts'

const ASKED = 'asked to persist'
const BACKUP = 'last backup'

const isRecord = (data: unknown): data is Record<string, unknown> => typeof data === 'object' && data !== null

/** What the browser answers when asked to keep what is saved; `unknown` where it cannot be asked. */
export type Persistence = 'persistent' | 'best effort' | 'unknown'

/** Asks the browser, once, not to delete what is saved when its disk fills. Sheets are saved the same if it refuses. */
export async function askToPersist(store: Store): Promise<void> {
  try {
    if (!store.persistent || (await store.setting(ASKED))) return
    await store.saveSetting(ASKED, true)
    await navigator.storage.persist()
  } catch {
    // A browser without the question, or without the answer.
  }
}

/** What the browser has answered; with `again` it is asked once more. */
export async function persistence(again = false): Promise<Persistence> {
  try {
    const granted = (await navigator.storage.persisted()) || (again && (await navigator.storage.persist()))
    return granted ? 'persistent' : 'best effort'
  } catch {
    return 'unknown'
  }
}

/**
 * Whether this engine deletes what a page saved when it was not visited for seven days of use. WebKit does, but not
 * for a page on the home screen (WebKit, “Full Third-Party Cookie Blocking and More”, 2020).
 */
export const deletesUnvisited = (): boolean =>
  'GestureEvent' in globalThis && !globalThis.matchMedia?.('(display-mode: standalone)').matches

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
