import { isRecord, isSame, type Loose } from '../../worksheet/schema/content.ts'
import type { Worksheet } from '../../worksheet/schema/document.ts'
import { DocumentError, parseJson, readData } from '../../worksheet/schema/read-document.ts'
import { newId } from '../store/new-id.ts'
import { lineOf } from '../store/summary.ts'
import type { RawRevision, RawSheet, Store, Summary } from '../store/types.ts'
import { withoutPreviews } from './previews.ts'
import { BACKUP_WORDS as WORDS } from './words.ts'

const BACKUP_FORMAT = 'evenfield-backup'
const BACKUP_VERSION = 1
const LONGEST_MARK = 500

/** Why a backup cannot be opened. */
export class BackupError extends Error {
  override readonly name = 'BackupError'
}

/** A backup as text, and what is to be said of it. */
export interface Backup {
  readonly text: string
  readonly sheets: number
  /** The titles of sheets that cannot be read; they are in it as they lie in the store. */
  readonly unreadable: readonly string[]
}

/** One sheet of a backup. */
export interface BackupSheet {
  readonly raw: RawSheet
  /** Where it can be read. */
  readonly worksheet?: Worksheet
  /** Why it cannot be. */
  readonly problem?: string
  readonly revisions: readonly RawRevision[]
}

/** What came of merging a backup. */
export interface Merged {
  /** Sheets that were not here. */
  readonly added: number
  /** Sheets that are here in another state: the backup's is beside it as a copy. */
  readonly copied: number
  /** Sheets that are here just so. */
  readonly same: number
  /** What in the backup cannot be read, and why; what is a sheet all the same came in as it is. */
  readonly unread: readonly string[]
}

/** Every sheet saved in this browser, removed ones too, readable or not, as one text, with what else is to go along. */
export async function backupText(
  store: Store,
  withRevisions: boolean,
  along: Readonly<Record<string, unknown>> = {},
): Promise<Backup> {
  const sheets: string[] = []
  const unreadable: string[] = []
  for (const { id, title } of [...(await store.list()), ...(await store.listRemoved())]) {
    const found = await store.raw(id)
    if (!found) continue
    const { data, summary } = found
    const { changed, removed, archived } = summary
    if (problemOf(data) !== undefined) unreadable.push(title)
    const revisions = withRevisions ? await pastOf(store, id) : []
    sheets.push(
      JSON.stringify({
        id,
        changed,
        ...(removed === undefined ? {} : { removed }),
        ...(archived === undefined ? {} : { archived }),
        worksheet: withoutPreviews(data),
        revisions,
      }),
    )
  }
  const head = { format: BACKUP_FORMAT, version: BACKUP_VERSION, made: new Date().toISOString(), ...along }
  const text = `${JSON.stringify(head).slice(0, -1)},"sheets":[${sheets.join(',')}]}\n`
  return { text, sheets: sheets.length, unreadable }
}

async function pastOf(store: Store, id: string): Promise<RawRevision[]> {
  const past: RawRevision[] = []
  for (const { sheet: _, ...line } of await store.revisions(id)) {
    const worksheet = await store.rawRevision(id, line.at)
    if (worksheet !== undefined) past.push({ ...line, worksheet: withoutPreviews(worksheet) })
  }
  return past
}

/** Why data is no worksheet; undefined where it is one. */
function problemOf(data: unknown): string | undefined {
  try {
    readData(data)
    return undefined
  } catch (error) {
    if (error instanceof DocumentError) return error.message
    throw error
  }
}

const isTime = (data: unknown): data is number => typeof data === 'number' && Number.isFinite(data) && data >= 0
const listed = (data: unknown): readonly unknown[] => (Array.isArray(data) ? data : [])

/** How far the clock of another device may be ahead, in milliseconds, before its dates are not believed. */
const CLOCK_MS = 60_000

/** A date from outside, which may be any: never in the future, so that it neither leads a list nor stops anything. */
const past = (data: unknown, now: number): number => (isTime(data) && data <= now + CLOCK_MS ? data : now)

/** Reads a backup; what in it is no sheet at all is named, the others come in. Throws BackupError. */
export function readBackup(text: string): { sheets: readonly BackupSheet[]; unread: readonly string[] } {
  let data: unknown
  try {
    data = parseJson(text)
  } catch (error) {
    throw new BackupError(`${WORDS.backupUnread} ${(error as Error).message}`, { cause: error })
  }
  if (!isRecord(data) || data.format !== BACKUP_FORMAT) throw new BackupError(WORDS.noBackup)
  if (data.version !== BACKUP_VERSION) throw new BackupError(WORDS.newerBackup)
  const now = Date.now()
  const sheets: BackupSheet[] = []
  const unread: string[] = []
  listed(data.sheets).forEach((one, at) => {
    const sheet = readSheet(one, now)
    if (typeof sheet === 'string') unread.push(WORDS.sheetUnread(titleOf(one, at), sheet))
    else sheets.push(sheet)
  })
  return { sheets, unread }
}

function titleOf(data: unknown, at: number): string {
  const worksheet = isRecord(data) && isRecord(data.worksheet) ? data.worksheet : {}
  const { title } = worksheet
  return typeof title === 'string' && title !== '' ? title.slice(0, 80) : WORDS.untitled(at + 1)
}

/** One sheet, or why it is none. */
function readSheet(data: unknown, now: number): BackupSheet | string {
  if (!isRecord(data) || typeof data.id !== 'string' || !/^[\w-]{1,64}$/.test(data.id)) return WORDS.oddId
  const { id, worksheet: raw } = data
  const problem = problemOf(raw)
  if (problem !== undefined && !(isRecord(raw) && raw.format === 'evenfield-worksheet')) return problem
  const worksheet = problem === undefined ? readData(raw) : undefined
  const since = (key: 'removed' | 'archived') => (isTime(data[key]) ? { [key]: past(data[key], now) } : {})
  const line = worksheet
    ? lineOf(worksheet)
    : { title: titleOf(data, 0), cells: isRecord(raw) ? listed(raw.cells).length : 0 }
  const summary: Summary = {
    id,
    ...line,
    changed: past(data.changed, now),
    changes: 1,
    stamp: newId(),
    ...since('removed'),
    ...since('archived'),
  }
  return {
    raw: { data: worksheet ?? raw, summary },
    ...(worksheet ? { worksheet } : {}),
    ...(problem === undefined ? {} : { problem }),
    revisions: revisionsOf(data.revisions, now),
  }
}

/** The revisions in their order, each at a different time. One that cannot be read stays as it is, like a sheet. */
function revisionsOf(data: unknown, now: number): RawRevision[] {
  const found = listed(data).filter((one): one is Loose => isRecord(one) && isRecord(one.worksheet))
  const sorted = found.map((one) => ({ one, at: past(one.at, now) })).sort((a, b) => a.at - b.at)
  let before = Number.POSITIVE_INFINITY
  return sorted.reverse().map(({ one, at }) => {
    // Dates that had to be brought back to now would otherwise fall on one another.
    before = at < before ? at : Math.max(0, before - 0.001)
    const mark = (key: 'name' | 'why' | 'stamp') => {
      const text = one[key]
      return typeof text === 'string' ? { [key]: text.slice(0, LONGEST_MARK) } : {}
    }
    const shared = one.shared === true ? { shared: true } : {}
    return { at: before, ...mark('name'), ...mark('why'), ...mark('stamp'), ...shared, worksheet: one.worksheet }
  })
}

/** How many sheets of a backup are not here under their id. */
export async function newSheetsIn(store: Store, text: string): Promise<{ sheets: number; fresh: number }> {
  const { sheets } = readBackup(text)
  const here = new Set([...(await store.list()), ...(await store.listRemoved())].map(({ id }) => id))
  return { sheets: sheets.length, fresh: sheets.filter(({ raw }) => !here.has(raw.summary.id)).length }
}

/** Takes a backup in: what is not here comes in, what is here stays, and of what is both and differs a copy comes in. */
export async function mergeBackup(store: Store, text: string): Promise<Merged> {
  const { sheets, unread } = readBackup(text)
  const counts = { added: 0, copied: 0, same: 0 }
  const raw: string[] = []
  for (const sheet of sheets) {
    const came = await bringIn(store, sheet)
    counts[came]++
    if (sheet.problem !== undefined && came !== 'same') raw.push(WORDS.sheetRaw(sheet.raw.summary.title, sheet.problem))
  }
  return { ...counts, unread: [...unread, ...raw] }
}

async function bringIn(store: Store, { raw, worksheet, revisions }: BackupSheet): Promise<'added' | 'copied' | 'same'> {
  const { summary, data } = raw
  if (await store.import(raw, revisions)) return 'added'
  const here = await store.raw(summary.id)
  if (here && isSame(withoutPreviews(here.data), withoutPreviews(data))) {
    await store.importRevisions(summary.id, revisions)
    return 'same'
  }
  const own = worksheet && asCopy(worksheet)
  const copy = own ?? data
  const title = own?.title ?? summary.title
  const known = await findSame(store, copy, title)
  if (known !== undefined) {
    await store.importRevisions(known, revisions)
    return 'same'
  }
  await store.import({ data: copy, summary: { ...summary, id: newId(), title } }, revisions)
  return 'copied'
}

const asCopy = (worksheet: Worksheet): Worksheet => ({
  ...worksheet,
  title: WORDS.fromBackup(worksheet.title.slice(0, 480)),
})

/** A copy brought in by an earlier merge of the same backup. */
async function findSame(store: Store, data: unknown, title: string): Promise<string | undefined> {
  for (const summary of [...(await store.list()), ...(await store.listRemoved())]) {
    if (summary.title !== title) continue
    const other = await store.raw(summary.id)
    if (other && isSame(other.data, data)) return summary.id
  }
  return undefined
}

/** “2 sheets imported from the backup. 1 sheet was here already.” */
export function mergeText({ added, copied, same, unread }: Merged): string {
  const said = [
    added > 0 ? WORDS.cameIn(added) : '',
    copied > 0 ? WORDS.cameAsCopies(copied) : '',
    same > 0 ? WORDS.wereHere(same) : '',
    ...unread,
  ].filter(Boolean)
  return said.length > 0 ? said.join(' ') : WORDS.emptyBackup
}
