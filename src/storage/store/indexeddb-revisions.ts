import type { WriteTransaction } from './database.ts'
import { freeTime, isDue, type Revision, revisionsToDrop } from './revision.ts'
import { now, stateOf } from './summary.ts'
import type { RawRevision, RevisionMark, Summary } from './types.ts'

/** All keys of one sheet's revisions: a list sorts behind every number. */
export const revisionsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id], [id, []])

const put = (writing: WriteTransaction, revision: Revision, worksheet: unknown): Promise<unknown> => {
  const { sheet, at } = revision
  return Promise.all([
    writing.objectStore('revisions').put(revision),
    writing.objectStore('past').put({ sheet, at, worksheet }),
  ])
}

const linesOf = (writing: WriteTransaction, id: string): Promise<Revision[]> =>
  writing.objectStore('revisions').getAll(revisionsOf(id))

async function thin(writing: WriteTransaction, revisions: readonly Revision[], at: number): Promise<void> {
  await Promise.all(
    revisionsToDrop(revisions, at).flatMap(({ sheet, at }) => [
      writing.objectStore('revisions').delete([sheet, at]),
      writing.objectStore('past').delete([sheet, at]),
    ]),
  )
}

/** The revision that is the saved state itself. Revisions of earlier versions have no stamp: their time names them. */
const isOf = (summary: Summary, { at, stamp }: Revision): boolean =>
  stamp === undefined ? at === summary.changed && summary.stamp === undefined : stamp === stateOf(summary)

/** Before a sheet is written over: its saved state becomes a revision where one is due, and the others are thinned. */
export async function saveRevisionOf(writing: WriteTransaction, before: Summary, at: number): Promise<void> {
  if (!isDue(before.changed, at)) return
  const found = await writing.objectStore('worksheets').get(before.id)
  const lines = await linesOf(writing, before.id)
  if (found && !lines.some((line) => isOf(before, line))) {
    const line: Revision = { sheet: before.id, at: freeTime(before.changed, lines), stamp: stateOf(before) }
    await put(writing, line, found.worksheet)
    lines.push(line)
  }
  await thin(writing, lines, at)
}

/** Saves the saved state as a revision, marked; one that is saved already gets the marks. Gives its time. */
export async function saveCurrentAsRevision(
  writing: WriteTransaction,
  id: string,
  mark: RevisionMark,
): Promise<number | undefined> {
  const summary = await writing.objectStore('summaries').get(id)
  const found = await writing.objectStore('worksheets').get(id)
  if (!summary || !found) return undefined
  const lines = await linesOf(writing, id)
  const saved = lines.find((line) => isOf(summary, line))
  const at = saved?.at ?? freeTime(summary.changed, lines)
  await put(writing, { sheet: id, at, stamp: stateOf(summary), ...saved, ...mark }, found.worksheet)
  return at
}

/** Saves a state of the sheet that is not the saved one as a revision. Gives its time. */
export async function saveOtherAsRevision(
  writing: WriteTransaction,
  id: string,
  mark: RevisionMark,
  worksheet: unknown,
): Promise<number | undefined> {
  if ((await writing.objectStore('summaries').getKey(id)) === undefined) return undefined
  const at = freeTime(now(), await linesOf(writing, id))
  await put(writing, { sheet: id, at, ...mark }, worksheet)
  return at
}

/** Adds revisions from a backup or a copy; those whose time is taken are left out. */
export async function addRevisions(writing: WriteTransaction, id: string, past: readonly RawRevision[]): Promise<void> {
  for (const { worksheet, ...line } of past) {
    const known = await writing.objectStore('revisions').getKey([id, line.at])
    if (known === undefined) await put(writing, { ...line, sheet: id }, worksheet)
  }
}
