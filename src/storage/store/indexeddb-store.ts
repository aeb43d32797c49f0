import type { Worksheet } from '../../worksheet/schema/document.ts'
import { type Database, openDatabase, type WriteTransaction, write } from './database.ts'
import { addRevisions, revisionsOf, saveCurrentAsRevision, saveRevisionOf } from './indexeddb-revisions.ts'
import { latestFirst, named } from './revision.ts'
import { asStoreError, StoreError } from './store-error.ts'
import { changesOf, newestFirst, summarise } from './summary.ts'
import type { Store, Summary } from './types.ts'

/** What was kept passes the schema before it is used; the shelf lists what is kept without ever needing that. */
async function checked(worksheet: unknown): Promise<Worksheet> {
  const { DocumentError, readData } = await import('../../worksheet/schema/read-document.ts')
  try {
    return readData(worksheet)
  } catch (error) {
    if (error instanceof DocumentError) throw new StoreError('unreadable', error.message, error)
    throw error
  }
}

/** The store in IndexedDB; fails with a StoreError where the browser refuses one. */
export async function openIndexedDb(name: string, onTrouble: (error: StoreError) => void): Promise<Store> {
  let database: Database | undefined
  let outdated: StoreError | undefined
  const onClosed = () => {
    database = undefined
  }
  const opened = async (): Promise<Database> => {
    if (outdated) throw outdated
    database ??= await openDatabase(
      name,
      (error) => {
        outdated = error
        onTrouble(error)
      },
      onClosed,
    )
    return database
  }
  await opened()

  const plainly = async <T>(work: (database: Database) => Promise<T>): Promise<T> => {
    try {
      return await work(await opened())
    } catch (error) {
      throw asStoreError(error)
    }
  }

  const writes = <T>(work: (writing: WriteTransaction) => Promise<T>): Promise<T> =>
    plainly((open) => write(open, work))

  const change = (id: string, how: (summary: Summary) => Summary) =>
    writes(async (writing) => {
      const summary = await writing.objectStore('summaries').get(id)
      if (summary) await writing.objectStore('summaries').put(how(summary))
    })

  const put = (writing: WriteTransaction, summary: Summary, worksheet: Worksheet) =>
    Promise.all([
      writing.objectStore('worksheets').put({ id: summary.id, worksheet }),
      writing.objectStore('summaries').put(summary),
    ])

  const summaries = (wanted: (summary: Summary) => boolean) =>
    plainly(async (open) => newestFirst((await open.getAll('summaries')).filter(wanted)))

  const read = (id: string) =>
    plainly(async (open) => {
      const reading = open.transaction(['worksheets', 'summaries'])
      const [found, summary] = await Promise.all([
        reading.objectStore('worksheets').get(id),
        reading.objectStore('summaries').get(id),
      ])
      return found && summary && { worksheet: await checked(found.worksheet), summary }
    })

  return {
    persistent: true,
    problem: undefined,
    read,

    save: (id, worksheet, seen) =>
      writes(async (writing) => {
        const before = await writing.objectStore('summaries').get(id)
        if (before && seen !== undefined && changesOf(before) !== seen) throw new StoreError('elsewhere')
        const summary = summarise(id, worksheet, before)
        if (before) await saveRevisionOf(writing, before, summary.changed)
        await put(writing, summary, worksheet)
        return summary
      }),

    load: async (id) => (await read(id))?.worksheet,
    list: () => summaries((summary) => summary.removed === undefined),
    listRemoved: () => summaries((summary) => summary.removed !== undefined),
    remove: (id) => change(id, (summary) => ({ ...summary, removed: Date.now() })),
    restore: (id) => change(id, ({ removed: _, ...summary }) => summary),

    erase: (id) =>
      writes((writing) =>
        Promise.all([
          writing.objectStore('worksheets').delete(id),
          writing.objectStore('summaries').delete(id),
          writing.objectStore('revisions').delete(revisionsOf(id)),
          writing.objectStore('past').delete(revisionsOf(id)),
        ]),
      ).then(() => {}),

    revisions: (id) => plainly(async (open) => latestFirst(await open.getAll('revisions', revisionsOf(id)))),
    revision: (id, at) =>
      plainly(async (open) => {
        const found = await open.get('past', [id, at])
        return found && (await checked(found.worksheet))
      }),
    saveRevision: (id, mark, worksheet) =>
      writes((writing) =>
        worksheet
          ? addRevisions(writing, id, [{ at: Date.now(), ...mark, worksheet }])
          : saveCurrentAsRevision(writing, id, mark),
      ),
    nameRevision: (id, at, name) =>
      writes(async (writing) => {
        const revision = await writing.objectStore('revisions').get([id, at])
        if (revision) await writing.objectStore('revisions').put(named(revision, name))
      }),

    import: (sheet, past) =>
      writes(async (writing) => {
        const { id } = sheet.summary
        if ((await writing.objectStore('summaries').getKey(id)) !== undefined) return false
        await put(writing, sheet.summary, sheet.worksheet)
        await addRevisions(writing, id, past)
        return true
      }),
    importRevisions: (id, past) => writes((writing) => addRevisions(writing, id, past)),

    setting: (setting) => plainly((open) => open.get('settings', setting)),
    saveSetting: (setting, value) =>
      plainly(async (open) => {
        await open.put('settings', value, setting)
      }),

    close() {
      database?.close()
      database = undefined
    },
  }
}
