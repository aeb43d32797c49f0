import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb'
import type { Revision } from './revision.ts'
import { StoreError } from './store-error.ts'
import type { Summary } from './types.ts'

export interface Schema extends DBSchema {
  /** The sheets, apart from their summaries so that the list need not read them all. */
  worksheets: { key: string; value: { id: string; worksheet: unknown } }
  summaries: { key: string; value: Summary }
  settings: { key: string; value: unknown }
  /** The lines of the sheets' revisions, and apart from them the sheets as they were. */
  revisions: { key: [string, number]; value: Revision }
  past: { key: [string, number]; value: { sheet: string; at: number; worksheet: unknown } }
  /** The steps of undo, each valid for the state of its sheet that has the stamp. */
  histories: { key: string; value: { sheet: string; stamp: string; history: unknown } }
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
  (database) => {
    database.createObjectStore('histories', { keyPath: 'sheet' })
  },
]

export type Database = IDBPDatabase<Schema>

export interface DatabaseEvents {
  /** Another tab has the database open in an older form; opening goes on once it is closed. */
  readonly blocked: () => void
  /** The connection is gone: closed by the browser, or because another tab upgrades or deletes the database. */
  readonly closed: (why: 'outdated' | 'deleted' | 'closed') => void
  /** There was no database; an empty one was made. */
  readonly created?: () => void
}

/** Opens the database, upgrading it where it is of an older version. May never settle: the caller sets a time limit. */
export async function openDatabase(name: string, events: DatabaseEvents): Promise<Database> {
  if (typeof indexedDB === 'undefined') throw new StoreError('refused')
  return openDB<Schema>(name, UPGRADES.length, {
    upgrade(database, from, _to, transaction) {
      if (from === 0) events.created?.()
      for (const upgrade of UPGRADES.slice(from)) upgrade(database, transaction)
    },
    blocked: events.blocked,
    blocking(_current, blockedVersion, event) {
      // A connection left open would prevent the other tab from opening at all.
      ;(event.target as IDBDatabase).close()
      events.closed(blockedVersion === null ? 'deleted' : 'outdated')
    },
    terminated: () => events.closed('closed'),
  })
}

/** The stores of sheets: what changes one of them changes them together. */
export const SHEET_STORES = ['worksheets', 'summaries', 'revisions', 'past', 'histories'] as const
export type WriteTransaction = IDBPTransaction<Schema, typeof SHEET_STORES, 'readwrite'>
export type ReadTransaction = IDBPTransaction<Schema, typeof SHEET_STORES, 'readonly'>
