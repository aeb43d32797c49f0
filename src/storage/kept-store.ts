import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb'
import type { Worksheet } from '../worksheet/document.ts'
import type { Store, Summary } from './store.ts'
import { asStoreError, StoreError } from './store-error.ts'
import { newestFirst, summarise } from './summary.ts'

interface Schema extends DBSchema {
  /** The sheets, apart from their summaries so that the list need not read them all. */
  worksheets: { key: string; value: { id: string; worksheet: Worksheet } }
  summaries: { key: string; value: Summary }
  settings: { key: string; value: unknown }
}

type Upgrade = (
  database: IDBPDatabase<Schema>,
  transaction: IDBPTransaction<Schema, StoreNames<Schema>[], 'versionchange'>,
) => void

/** What each version adds to the one before it. Append only: a browser may come from any of them. */
const UPGRADES: readonly Upgrade[] = [
  (database) => {
    database.createObjectStore('worksheets', { keyPath: 'id' })
    database.createObjectStore('summaries', { keyPath: 'id' })
    database.createObjectStore('settings')
  },
]

function openDatabase(name: string, onTrouble: (error: StoreError) => void, onClosed: () => void) {
  return new Promise<IDBPDatabase<Schema>>((resolve, reject) => {
    if (typeof indexedDB === 'undefined') throw new StoreError('refused')
    let givenUp = false
    openDB<Schema>(name, UPGRADES.length, {
      upgrade(database, from, _to, transaction) {
        for (const upgrade of UPGRADES.slice(from)) upgrade(database, transaction)
      },
      blocked() {
        givenUp = true
        reject(new StoreError('blocked'))
      },
      blocking(_current, _blocked, event) {
        // Holding on would keep the newer tab from opening at all.
        ;(event.target as IDBDatabase).close()
        onClosed()
        onTrouble(new StoreError('outdated'))
      },
      terminated: onClosed,
    }).then((database) => {
      if (givenUp) database.close()
      else resolve(database)
    }, reject)
  })
}

/** The store in IndexedDB; fails with a StoreError where the browser refuses one. */
export async function openKept(name: string, onTrouble: (error: StoreError) => void): Promise<Store> {
  let database: IDBPDatabase<Schema> | undefined
  let outdated: StoreError | undefined
  const onClosed = () => {
    database = undefined
  }
  const opened = async (): Promise<IDBPDatabase<Schema>> => {
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

  const plainly = async <T>(work: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T> => {
    try {
      return await work(await opened())
    } catch (error) {
      throw asStoreError(error)
    }
  }

  const change = (id: string, how: (summary: Summary) => Summary) =>
    plainly(async (open) => {
      const transaction = open.transaction('summaries', 'readwrite', { durability: 'strict' })
      const summary = await transaction.store.get(id)
      if (summary) await transaction.store.put(how(summary))
      await transaction.done
    })

  const summaries = (wanted: (summary: Summary) => boolean) =>
    plainly(async (open) => newestFirst((await open.getAll('summaries')).filter(wanted)))

  return {
    kept: true,
    trouble: undefined,

    save: (id, worksheet) =>
      plainly(async (open) => {
        const summary = summarise(id, worksheet)
        const transaction = open.transaction(['worksheets', 'summaries'], 'readwrite', { durability: 'strict' })
        await Promise.all([
          transaction.objectStore('worksheets').put({ id, worksheet }),
          transaction.objectStore('summaries').put(summary),
          transaction.done,
        ])
        return summary.changed
      }),

    load: (id) =>
      plainly(async (open) => {
        const found = await open.get('worksheets', id)
        if (found === undefined) return undefined
        // The shelf lists what is kept without ever needing the schema.
        const { DocumentError, readData } = await import('../worksheet/read-document.ts')
        try {
          return readData(found.worksheet)
        } catch (error) {
          if (error instanceof DocumentError) throw new StoreError('unreadable', error.message, error)
          throw error
        }
      }),

    list: () => summaries((summary) => summary.removed === undefined),
    listRemoved: () => summaries((summary) => summary.removed !== undefined),
    remove: (id) => change(id, (summary) => ({ ...summary, removed: Date.now() })),
    restore: (id) => change(id, ({ removed: _, ...summary }) => summary),

    erase: (id) =>
      plainly(async (open) => {
        const transaction = open.transaction(['worksheets', 'summaries'], 'readwrite', { durability: 'strict' })
        await Promise.all([
          transaction.objectStore('worksheets').delete(id),
          transaction.objectStore('summaries').delete(id),
          transaction.done,
        ])
      }),

    setting: (setting) => plainly((open) => open.get('settings', setting)),
    keepSetting: (setting, value) =>
      plainly(async (open) => {
        await open.put('settings', value, setting)
      }),

    close() {
      database?.close()
      database = undefined
    },
  }
}
