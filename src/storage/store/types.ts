import type { Worksheet } from '../../worksheet/schema/document.ts'
import type { Revision } from './revision.ts'
import type { StoreError } from './store-error.ts'

/** A line of the list of kept sheets, readable without the sheet itself. */
export interface Summary {
  readonly id: string
  readonly title: string
  /** When it was last saved, in milliseconds since 1970. */
  readonly changed: number
  /** How many cells it has. */
  readonly cells: number
  /** How often it was saved: who saves says which count was seen, so that no tab writes over another. */
  readonly changes?: number
  /** When it was put in the bin; absent while it is in use. */
  readonly removed?: number
}

/** A sheet as it is kept, with its line of the list. */
export interface SavedSheet {
  readonly worksheet: Worksheet
  readonly summary: Summary
}

/** A revision with the sheet as it stood. */
export type SavedRevision = Omit<Revision, 'sheet'> & { readonly worksheet: Worksheet }

/** Where the sheets are. Every failure is a StoreError. */
export interface Store {
  /** False: nothing outlives this tab. */
  readonly persistent: boolean
  /** Why nothing is kept, where it is not. */
  readonly problem: StoreError | undefined
  /**
   * Keeps a sheet under its id; resolves only once it is written. With `seen`, the count of changes this one follows
   * on, it is refused as `elsewhere` where another has been made meanwhile.
   */
  save(id: string, worksheet: Worksheet, seen?: number): Promise<Summary>
  /** The sheet with its line, read together. */
  read(id: string): Promise<SavedSheet | undefined>
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
  /** Removes a sheet and its past for good. */
  erase(id: string): Promise<void>
  /** A sheet's past, the latest first. */
  revisions(id: string): Promise<readonly Revision[]>
  /** The sheet as it stood. */
  revision(id: string, at: number): Promise<Worksheet | undefined>
  /** Keeps the sheet as it stands, or `worksheet` in its place, as a revision, with a name or why. */
  saveRevision(
    id: string,
    mark: { readonly name?: string; readonly why?: string },
    worksheet?: Worksheet,
  ): Promise<void>
  /** Names a revision; an empty name lets it thin with the rest. */
  nameRevision(id: string, at: number, name: string): Promise<void>
  /** Takes in a sheet from elsewhere, with its past, where there is none of its id. False: there is one. */
  import(sheet: SavedSheet, past: readonly SavedRevision[]): Promise<boolean>
  /** Adds to a sheet's past what is not in it. */
  importRevisions(id: string, past: readonly SavedRevision[]): Promise<void>
  /** A setting of this browser: a plain value under a name. */
  setting(name: string): Promise<unknown>
  saveSetting(name: string, value: unknown): Promise<void>
  close(): void
}
