import type { Worksheet } from '../../worksheet/schema/document.ts'
import { Connection, type ConnectionOptions } from './connection.ts'
import { type ReadTransaction, SHEET_STORES, type WriteTransaction } from './database.ts'
import {
  addRevisions,
  revisionsOf,
  saveCurrentAsRevision,
  saveOtherAsRevision,
  saveRevisionOf,
} from './indexeddb-revisions.ts'
import { newId } from './new-id.ts'
import { readable, writable } from './readable.ts'
import { latestFirst, named } from './revision.ts'
import { asStoreError, StoreError } from './store-error.ts'
import { asArchived, newestFirst, stateOf, summarise, withChecks } from './summary.ts'
import type { SaveOptions, Store, Summary } from './types.ts'

/** The store in IndexedDB, opened when it is first used. */
function indexedDbStore(connection: Connection): Store {
  const writes = <T>(work: (writing: WriteTransaction) => Promise<T>): Promise<T> =>
    connection.transact([...SHEET_STORES], 'readwrite', work as never)
  const reads = <T>(work: (reading: ReadTransaction) => Promise<T>): Promise<T> =>
    connection.transact([...SHEET_STORES], 'readonly', work as never)

  const change = (id: string, how: (summary: Summary) => Summary) =>
    writes(async (writing) => {
      const summary = await writing.objectStore('summaries').get(id)
      if (summary) await writing.objectStore('summaries').put(how(summary))
    })

  const put = (writing: WriteTransaction, summary: Summary, worksheet: unknown) =>
    Promise.all([
      writing.objectStore('worksheets').put({ id: summary.id, worksheet }),
      writing.objectStore('summaries').put(summary),
    ])

  const summaries = (isIncluded: (summary: Summary) => boolean) =>
    reads(async (reading) => newestFirst((await reading.objectStore('summaries').getAll()).filter(isIncluded)))

  const stored = (id: string) =>
    reads(async (reading) => {
      const [found, summary, saved] = await Promise.all([
        reading.objectStore('worksheets').get(id),
        reading.objectStore('summaries').get(id),
        reading.objectStore('histories').get(id),
      ])
      if (!found || !summary) return undefined
      const history = saved?.stamp === summary.stamp ? saved?.history : undefined
      return { data: found.worksheet, summary, ...(history === undefined ? {} : { history }) }
    })

  const read = async (id: string) => {
    const found = await stored(id)
    if (!found) return undefined
    const { data, ...rest } = found
    return { worksheet: await readable(data), ...rest }
  }

  const rawRevision = async (id: string, at: number): Promise<unknown> =>
    (await reads((reading) => reading.objectStore('past').get([id, at])))?.worksheet

  return {
    persistent: true,
    get problem() {
      return connection.problem
    },
    read,
    load: async (id) => (await read(id))?.worksheet,
    raw: stored,

    async save(id, worksheet, options = {}) {
      await writable(worksheet)
      const stamp = newId()
      try {
        return await writes((writing) => save(writing, id, worksheet, stamp, options))
      } catch (error) {
        const failure = asStoreError(error)
        if (failure.problem !== 'elsewhere') failure.attempt = stamp
        throw failure
      }
    },

    list: () => summaries((summary) => summary.removed === undefined),
    listRemoved: () => summaries((summary) => summary.removed !== undefined),
    remove: (id) => change(id, (summary) => ({ ...summary, removed: Date.now() })),
    archive: (id, archived) => change(id, (summary) => asArchived(summary, archived)),
    noteChecks: (id, checks) => change(id, (summary) => withChecks(summary, checks)),
    restore: (id) => change(id, ({ removed: _, ...summary }) => summary),

    erase: (id) =>
      writes((writing) =>
        Promise.all([
          writing.objectStore('worksheets').delete(id),
          writing.objectStore('summaries').delete(id),
          writing.objectStore('histories').delete(id),
          writing.objectStore('revisions').delete(revisionsOf(id)),
          writing.objectStore('past').delete(revisionsOf(id)),
        ]),
      ).then(() => {}),

    revisions: (id) =>
      reads(async (reading) => latestFirst(await reading.objectStore('revisions').getAll(revisionsOf(id)))),
    async revision(id, at) {
      const data = await rawRevision(id, at)
      return data === undefined ? undefined : readable(data)
    },
    rawRevision,
    saveRevision: (id, mark, worksheet) =>
      writes((writing) =>
        worksheet ? saveOtherAsRevision(writing, id, mark, worksheet) : saveCurrentAsRevision(writing, id, mark),
      ),
    nameRevision: (id, at, name) =>
      writes(async (writing) => {
        const revision = await writing.objectStore('revisions').get([id, at])
        if (revision) await writing.objectStore('revisions').put(named(revision, name))
      }),

    import: ({ data, summary }, past) =>
      writes(async (writing) => {
        if ((await writing.objectStore('summaries').getKey(summary.id)) !== undefined) return false
        await put(writing, summary, data)
        await addRevisions(writing, summary.id, past)
        return true
      }),
    importRevisions: (id, past) => writes((writing) => addRevisions(writing, id, past)),

    setting: (setting) =>
      connection.transact(['settings'], 'readonly', (reading) => reading.objectStore('settings').get(setting)),
    saveSetting: (setting, value) =>
      connection.transact(['settings'], 'readwrite', async (writing) => {
        await writing.objectStore('settings').put(value, setting)
      }),

    sleep: () => connection.sleep(),
    close: () => connection.close(),
  }
}

async function save(
  writing: WriteTransaction,
  id: string,
  worksheet: Worksheet,
  stamp: string,
  { seen = [], history, checks }: SaveOptions,
): Promise<Summary> {
  const before = await writing.objectStore('summaries').get(id)
  // An attempt of this very save completed although its answer was lost.
  if (before?.stamp === stamp) return before
  if (before && !seen.includes(stateOf(before))) throw new StoreError('elsewhere')
  const summary = summarise(id, worksheet, stamp, { before, checks })
  if (before) await saveRevisionOf(writing, before, summary.changed)
  const histories = writing.objectStore('histories')
  await Promise.all([
    writing.objectStore('worksheets').put({ id, worksheet }),
    writing.objectStore('summaries').put(summary),
    history === undefined ? histories.delete(id) : histories.put({ sheet: id, stamp, history }),
  ])
  return summary
}

/** Opens the store in IndexedDB; fails with a StoreError where the browser refuses one for good. */
export async function openIndexedDb(name: string, options: ConnectionOptions): Promise<Store> {
  const connection = new Connection(name, options)
  try {
    await connection.open()
  } catch (error) {
    const { problem } = asStoreError(error)
    // What may still come right is tried again at every use.
    if (problem === 'refused' || problem === 'failed') throw error
  }
  return indexedDbStore(connection)
}
