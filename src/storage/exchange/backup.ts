import type { Worksheet } from '../../worksheet/schema/document.ts'
import { parseJson, readData } from '../../worksheet/schema/read-document.ts'
import { newId } from '../store/store.ts'
import type { SavedRevision, Store, Summary } from '../store/types.ts'

const BACKUP_FORMAT = 'evenfield-backup'
const BACKUP_VERSION = 1

/** Why a backup cannot be opened. */
export class BackupError extends Error {
  override readonly name = 'BackupError'
}

/** One sheet of a backup: as it stood, when, and its past where that was asked for. */
export interface BackupContent {
  readonly id: string
  readonly changed: number
  readonly removed?: number
  readonly worksheet: Worksheet
  readonly revisions: readonly SavedRevision[]
}

/** What came of merging a backup. */
export interface Merged {
  /** Sheets that were not here. */
  readonly added: number
  /** Sheets that are here in another state: the backup's stands beside it as a copy. */
  readonly copied: number
  /** Sheets that are here just so. */
  readonly same: number
  /** What in the backup cannot be read, and why. */
  readonly unread: readonly string[]
}

/** Every sheet kept in this browser, those in the bin too, as one text, with what else is to go along. */
export async function backupText(
  store: Store,
  withRevisions: boolean,
  along: Readonly<Record<string, unknown>> = {},
): Promise<string> {
  const sheets: BackupContent[] = []
  for (const { id } of [...(await store.list()), ...(await store.listRemoved())]) {
    const kept = await store.read(id).catch(() => undefined)
    if (!kept) continue
    const { changed, removed } = kept.summary
    const revisions = withRevisions ? await pastOf(store, id) : []
    sheets.push({ id, changed, ...(removed === undefined ? {} : { removed }), worksheet: kept.worksheet, revisions })
  }
  const backup = { format: BACKUP_FORMAT, version: BACKUP_VERSION, made: new Date().toISOString(), sheets, ...along }
  return `${JSON.stringify(backup)}\n`
}

async function pastOf(store: Store, id: string): Promise<SavedRevision[]> {
  const past: SavedRevision[] = []
  for (const { sheet: _, ...line } of await store.revisions(id)) {
    const worksheet = await store.revision(id, line.at).catch(() => undefined)
    if (worksheet) past.push({ ...line, worksheet })
  }
  return past
}

type Loose = Readonly<Record<string, unknown>>
const isRecord = (data: unknown): data is Loose => typeof data === 'object' && data !== null && !Array.isArray(data)
const isTime = (data: unknown): data is number => typeof data === 'number' && Number.isFinite(data) && data >= 0
const listed = (data: unknown): readonly unknown[] => (Array.isArray(data) ? data : [])

/** Reads a backup; sheets in it that cannot be read are named, the others come in. Throws BackupError. */
export function readBackup(text: string): { sheets: readonly BackupContent[]; unread: readonly string[] } {
  let data: unknown
  try {
    data = parseJson(text)
  } catch (error) {
    throw new BackupError(`This backup cannot be read. ${(error as Error).message}`, { cause: error })
  }
  if (!isRecord(data) || data.format !== BACKUP_FORMAT) throw new BackupError('This is not a backup.')
  if (data.version !== BACKUP_VERSION)
    throw new BackupError('This backup was made by a newer Evenfield. Reload the page to get the newest.')
  const sheets: BackupContent[] = []
  const unread: string[] = []
  listed(data.sheets).forEach((one, at) => {
    try {
      sheets.push(readSheet(one))
    } catch (error) {
      const worksheet = isRecord(one) && isRecord(one.worksheet) ? one.worksheet : {}
      const title = typeof worksheet.title === 'string' && worksheet.title !== '' ? worksheet.title : `Sheet ${at + 1}`
      unread.push(`«${title.slice(0, 80)}» cannot be read. ${(error as Error).message}`)
    }
  })
  return { sheets, unread }
}

function readSheet(data: unknown): BackupContent {
  if (!isRecord(data) || typeof data.id !== 'string' || !/^[\w-]{1,64}$/.test(data.id))
    throw new BackupError('Its id is missing or odd.')
  const { id, removed } = data
  return {
    id,
    changed: isTime(data.changed) ? data.changed : Date.now(),
    ...(isTime(removed) ? { removed } : {}),
    worksheet: readData(data.worksheet),
    revisions: listed(data.revisions).flatMap(readPast),
  }
}

/** A revision that cannot be read is left out: the sheet itself is what matters. */
function readPast(data: unknown): SavedRevision[] {
  if (!isRecord(data) || !isTime(data.at)) return []
  const { at, name, why } = data
  try {
    return [
      {
        at,
        ...(typeof name === 'string' ? { name } : {}),
        ...(typeof why === 'string' ? { why } : {}),
        worksheet: readData(data.worksheet),
      },
    ]
  } catch {
    return []
  }
}

/** Content told apart without regard to the order of keys, which a file may change. */
function sameAs(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((one, at) => sameAs(one, b[at]))
  if (!isRecord(a) || !isRecord(b)) return Object.is(a, b)
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && sameAs(a[key], b[key]))
}

const asCopy = (worksheet: Worksheet): Worksheet => ({
  ...worksheet,
  title: `${worksheet.title.slice(0, 480)}, from a backup`,
})

const lineOf = ({ changed, removed, worksheet }: BackupContent, id: string): Summary => ({
  id,
  title: worksheet.title,
  changed,
  cells: worksheet.cells.length,
  changes: 1,
  ...(removed === undefined ? {} : { removed }),
})

/** Takes a backup in: what is not here comes in, what is here stays, and what is both and differs is kept twice. */
export async function mergeBackup(store: Store, text: string): Promise<Merged> {
  const { sheets, unread } = readBackup(text)
  const counts = { added: 0, copied: 0, same: 0 }
  for (const sheet of sheets) counts[await bringIn(store, sheet)]++
  return { ...counts, unread }
}

async function bringIn(store: Store, sheet: BackupContent): Promise<'added' | 'copied' | 'same'> {
  const { id, worksheet, revisions } = sheet
  if (await store.import({ worksheet, summary: lineOf(sheet, id) }, revisions)) return 'added'
  // One that is here but can no longer be read counts as different: its backup may be what mends it.
  const here = await store.load(id).catch(() => undefined)
  if (here && sameAs(here, worksheet)) {
    await store.importRevisions(id, revisions)
    return 'same'
  }
  const copy = asCopy(worksheet)
  const isHere = await findSame(store, copy)
  if (isHere !== undefined) {
    await store.importRevisions(isHere, revisions)
    return 'same'
  }
  const fresh = newId()
  await store.import({ worksheet: copy, summary: lineOf({ ...sheet, worksheet: copy }, fresh) }, revisions)
  return 'copied'
}

/** A copy brought in by an earlier merge of the same backup. */
async function findSame(store: Store, worksheet: Worksheet): Promise<string | undefined> {
  for (const { id, title, cells } of [...(await store.list()), ...(await store.listRemoved())]) {
    if (title !== worksheet.title || cells !== worksheet.cells.length) continue
    const other = await store.load(id).catch(() => undefined)
    if (other && sameAs(other, worksheet)) return id
  }
  return undefined
}

/** «2 sheets came in from the backup. 1 sheet you had already.» */
export function mergeText({ added, copied, same, unread }: Merged): string {
  const sheets = (n: number): string => (n === 1 ? '1 sheet' : `${n} sheets`)
  const said = [
    added > 0 ? `${sheets(added)} came in from the backup.` : '',
    copied === 1 ? '1 sheet differs from yours and came in as a copy beside it.' : '',
    copied > 1 ? `${sheets(copied)} differ from yours and came in as copies beside them.` : '',
    same > 0 ? `${sheets(same)} you had already.` : '',
    ...unread,
  ].filter(Boolean)
  return said.length > 0 ? said.join(' ') : 'The backup holds no sheets.'
}
