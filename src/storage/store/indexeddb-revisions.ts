import type { Worksheet } from '../../worksheet/schema/document.ts'
import type { WriteTransaction } from './database.ts'
import { isDue, type Revision, revisionsToDrop } from './revision.ts'
import type { SavedRevision, Summary } from './types.ts'

/** All keys of one sheet's past: a list sorts behind every number. */
export const revisionsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id], [id, []])

const put = (writing: WriteTransaction, revision: Revision, worksheet: Worksheet): Promise<unknown> => {
  const { sheet, at } = revision
  return Promise.all([
    writing.objectStore('revisions').put(revision),
    writing.objectStore('past').put({ sheet, at, worksheet }),
  ])
}

async function thin(writing: WriteTransaction, id: string, now: number): Promise<void> {
  const revisions = await writing.objectStore('revisions').getAll(revisionsOf(id))
  await Promise.all(
    revisionsToDrop(revisions, now).flatMap(({ sheet, at }) => [
      writing.objectStore('revisions').delete([sheet, at]),
      writing.objectStore('past').delete([sheet, at]),
    ]),
  )
}

/** Before a sheet is written over: what stands becomes a revision where it is due, and the past is thinned. */
export async function saveRevisionOf(writing: WriteTransaction, before: Summary, now: number): Promise<void> {
  if (!isDue(before.changed, now)) return
  const { id: sheet, changed: at } = before
  const found = await writing.objectStore('worksheets').get(sheet)
  const isKept = await writing.objectStore('revisions').getKey([sheet, at])
  if (found && isKept === undefined) await put(writing, { sheet, at }, found.worksheet)
  await thin(writing, sheet, now)
}

/** Keeps what stands as a revision, with a name or why; one that is kept already gets them. */
export async function saveCurrentAsRevision(
  writing: WriteTransaction,
  id: string,
  mark: { readonly name?: string; readonly why?: string },
): Promise<void> {
  const summary = await writing.objectStore('summaries').get(id)
  const found = await writing.objectStore('worksheets').get(id)
  if (!summary || !found) return
  const at = summary.changed
  const kept = await writing.objectStore('revisions').get([id, at])
  await put(writing, { sheet: id, at, ...kept, ...mark }, found.worksheet)
}

export async function addRevisions(
  writing: WriteTransaction,
  id: string,
  past: readonly SavedRevision[],
): Promise<void> {
  for (const { worksheet, ...line } of past) {
    const isKept = await writing.objectStore('revisions').getKey([id, line.at])
    if (isKept === undefined) await put(writing, { ...line, sheet: id }, worksheet)
  }
}
