import { openIndexedDb } from './indexeddb-store.ts'
import { asStoreError, StoreError } from './store-error.ts'
import type { Store } from './types.ts'

export interface StoreOptions {
  /** The database's name. */
  readonly name?: string
  /** Told when a store that worked stops working: a newer Evenfield in another tab. */
  readonly onTrouble?: (error: StoreError) => void
}

/** Opens the browser's store; where that cannot be, one in memory that says why, so that the sheet stays usable. */
export async function openStore(options: StoreOptions = {}): Promise<Store> {
  try {
    return await openIndexedDb(options.name ?? 'evenfield', options.onTrouble ?? (() => {}))
  } catch (error) {
    const trouble = asStoreError(error)
    const { openMemory } = await import('./memory-store.ts')
    // Browsers have many names for not letting a page keep anything.
    return openMemory(trouble.problem === 'failed' ? new StoreError('refused', undefined, error) : trouble)
  }
}

/** A fresh id for a sheet. */
export function newId(): string {
  // randomUUID is missing on a page served without https from another machine.
  const bytes = crypto.getRandomValues(new Uint8Array(12))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
