import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb'
import type { Worksheet } from '../../worksheet/schema/document.ts'
import type { Revision } from './revision.ts'
import { StoreError } from './store-error.ts'
import type { Summary } from './types.ts'

export interface Schema extends DBSchema {
  /** The sheets, apart from their summaries so that the list need not read them all. */
  worksheets: { key: string; value: { id: string; worksheet: Worksheet } }
  summaries: { key: string; value: Summary }
  settings: { key: string; value: unknown }
  /** The sheets' past: the lines, and apart from them the sheets as they stood. */
  revisions: { key: [string, number]; value: Revision }
  past: { key: [string, number]; value: { sheet: string; at: number; worksheet: Worksheet } }
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
  (database) => {
    database.createObjectStore('revisions', { keyPath: ['sheet', 'at'] })
    database.createObjectStore('past', { keyPath: ['sheet', 'at'] })
  },
]

export type Database = IDBPDatabase<Schema>

export function openDatabase(
  name: string,
  onTrouble: (error: StoreError) => void,
  onClosed: () => void,
): Promise<Database> {
  return new Promise((resolve, reject) => {
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

const ALL = ['worksheets', 'summaries', 'revisions', 'past'] as const
export type WriteTransaction = IDBPTransaction<Schema, typeof ALL, 'readwrite'>

/** Does some writing, all of it or nothing; resolves only once it is on the disk. */
export async function write<T>(database: Database, work: (writing: WriteTransaction) => Promise<T>): Promise<T> {
  const writing = database.transaction(ALL, 'readwrite', { durability: 'strict' })
  const done = writing.done
  // Awaited below; until then a failure is not one that nobody hears of.
  done.catch(() => {})
  try {
    const made = await work(writing)
    await done
    return made
  } catch (error) {
    try {
      writing.abort()
    } catch {
      // The browser has ended it already, and says why.
    }
    throw writing.error ?? error
  }
}
