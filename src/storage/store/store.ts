import type { ConnectionOptions } from './connection.ts'
import { openIndexedDb } from './indexeddb-store.ts'
import { asStoreError, StoreError } from './store-error.ts'
import type { Store } from './types.ts'

export { newId } from './new-id.ts'

export interface StoreOptions extends ConnectionOptions {
  /** The database's name. */
  readonly name?: string
}

/**
 * Opens the browser's store. Where the browser refuses one, it is one in memory that says why, so that sheets stay
 * usable. One that is blocked or does not answer is given all the same: its `problem` says so, and it is tried again
 * at every use.
 */
export async function openStore({ name = 'evenfield', ...options }: StoreOptions = {}): Promise<Store> {
  try {
    return await openIndexedDb(name, options)
  } catch (error) {
    const failure = asStoreError(error)
    const { openMemory } = await import('./memory-store.ts')
    // Browsers have many names for not letting a page save anything.
    return openMemory(failure.problem === 'failed' ? new StoreError('refused', undefined, error) : failure)
  }
}
