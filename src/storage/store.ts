import type { Worksheet } from '../worksheet/document.ts'
import { openKept } from './kept-store.ts'
import { openMemory } from './memory-store.ts'
import { asStoreError, StoreError } from './store-error.ts'

/** A line of the list of kept sheets, readable without the sheet itself. */
export interface Summary {
  readonly id: string
  readonly title: string
  /** When it was last saved, in milliseconds since 1970. */
  readonly changed: number
  /** How many cells it has. */
  readonly cells: number
  /** When it was put in the bin; absent while it is in use. */
  readonly removed?: number
}

/** Where the sheets are. Every failure is a StoreError. */
export interface Store {
  /** False: nothing outlives this tab. */
  readonly kept: boolean
  /** Why nothing is kept, where it is not. */
  readonly trouble: StoreError | undefined
  /** Keeps a sheet under its id; resolves, with when, only once it is written. */
  save(id: string, worksheet: Worksheet): Promise<number>
  /** The sheet, in the bin or not; undefined where there is none. */
  load(id: string): Promise<Worksheet | undefined>
  /** Sheets in use, newest first. */
  list(): Promise<readonly Summary[]>
  /** Sheets in the bin, the latest removed first. */
  listRemoved(): Promise<readonly Summary[]>
  /** Puts a sheet in the bin. */
  remove(id: string): Promise<void>
  /** Takes a sheet out of the bin. */
  restore(id: string): Promise<void>
  /** Removes a sheet for good. */
  erase(id: string): Promise<void>
  /** A setting of this browser: a plain value under a name. */
  setting(name: string): Promise<unknown>
  keepSetting(name: string, value: unknown): Promise<void>
  close(): void
}

export interface StoreOptions {
  /** The database's name. */
  readonly name?: string
  /** Told when a store that worked stops working: a newer Evenfield in another tab. */
  readonly onTrouble?: (error: StoreError) => void
}

/** Opens the browser's store; where that cannot be, one in memory that says why, so that the sheet stays usable. */
export async function openStore(options: StoreOptions = {}): Promise<Store> {
  try {
    return await openKept(options.name ?? 'evenfield', options.onTrouble ?? (() => {}))
  } catch (error) {
    const trouble = asStoreError(error)
    // Browsers have many names for not letting a page keep anything.
    return openMemory(trouble.trouble === 'failed' ? new StoreError('refused', undefined, error) : trouble)
  }
}

/** A fresh id for a sheet. */
export function newId(): string {
  // randomUUID is missing on a page served without https from another machine.
  const bytes = crypto.getRandomValues(new Uint8Array(12))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
