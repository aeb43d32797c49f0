import type { Worksheet } from '../../worksheet/schema/document.ts'
import type { Revision } from './revision.ts'
import type { StoreError } from './store-error.ts'

/** A line of the list of saved sheets, readable without the sheet itself. */
export interface Summary {
  readonly id: string
  readonly title: string
  /** The job, where the sheet names one. */
  readonly job?: string
  /** The original’s size, as typed. */
  readonly of?: string
  /** How its checks were when it was last saved; absent where that was not computed. */
  readonly checks?: CheckCounts
  /** When it was put into the archive. */
  readonly archived?: number
  /** When it was last saved, by the clock of the device, in milliseconds since 1970. */
  readonly changed: number
  /** How many cells it has. */
  readonly cells: number
  /** How many times it was saved. */
  readonly changes?: number
  /** Fresh at every save. Summaries of earlier versions have none. */
  readonly stamp?: string
  /** When it was removed; absent while it is in use. */
  readonly removed?: number
}

/** How many checks of a sheet are in each state. */
export type CheckCounts = Readonly<Record<'pass' | 'marginal' | 'fail' | 'waiting', number>>

/** A sheet as it is saved, with its line of the list. */
export interface SavedSheet {
  readonly worksheet: Worksheet
  readonly summary: Summary
  /** The steps of undo saved together with this state of the sheet, unchecked. */
  readonly history?: unknown
}

/** A sheet or a revision just as it lies in the store, readable or not. */
export interface RawSheet {
  readonly data: unknown
  readonly summary: Summary
}

/** A revision with the sheet as it was, readable or not. */
export type RawRevision = Omit<Revision, 'sheet'> & { readonly worksheet: unknown }

export interface SaveOptions {
  /** The states of the sheet the writer has seen, as `stateOf` names them. None: the sheet is new. */
  readonly seen?: readonly string[]
  /** The steps of undo, plain data. */
  readonly history?: unknown
  /** How its checks are. */
  readonly checks?: CheckCounts | undefined
}

/** What a revision is marked with. */
export type RevisionMark = Pick<Revision, 'name' | 'why' | 'shared'>

/** Where the sheets are. Every failure is a StoreError. */
export interface Store {
  /** False: nothing outlives this tab. */
  readonly persistent: boolean
  /** Why nothing is saved at present, where that is so. */
  readonly problem: StoreError | undefined
  /**
   * Saves a sheet under its id; resolves only once its transaction is complete. Refused as `elsewhere` where a state
   * is saved under the id that is not among those seen, so that nothing unseen is ever written over.
   */
  save(id: string, worksheet: Worksheet, options?: SaveOptions): Promise<Summary>
  /** The sheet with its line, read together. */
  read(id: string): Promise<SavedSheet | undefined>
  /** The sheet, removed or not; undefined where there is none. */
  load(id: string): Promise<Worksheet | undefined>
  /** What lies under the id, whether or not it can be read as a sheet. */
  raw(id: string): Promise<RawSheet | undefined>
  /** Sheets in use, newest first. */
  list(): Promise<readonly Summary[]>
  /** Removed sheets, the latest removed first. */
  listRemoved(): Promise<readonly Summary[]>
  remove(id: string): Promise<void>
  /** Puts a sheet in use into the archive, or takes it out again. */
  archive(id: string, archived: boolean): Promise<void>
  /** Says how the checks of a sheet stand where its line does not: one from a file or a backup, not edited yet. */
  noteChecks(id: string, checks: CheckCounts): Promise<void>
  /** Puts a removed sheet back among those in use. */
  restore(id: string): Promise<void>
  /** Deletes a sheet and its revisions for good. */
  erase(id: string): Promise<void>
  /** A sheet's revisions, the latest first. */
  revisions(id: string): Promise<readonly Revision[]>
  /** The sheet as it was. */
  revision(id: string, at: number): Promise<Worksheet | undefined>
  /** The same, whether or not it can be read as a sheet. */
  rawRevision(id: string, at: number): Promise<unknown>
  /**
   * Saves the sheet as it is, or `worksheet` in its place, as a revision. Gives its time, by which it is found again;
   * undefined where there is no such sheet.
   */
  saveRevision(id: string, mark: RevisionMark, worksheet?: Worksheet): Promise<number | undefined>
  /** Names a revision; an empty name lets it thin with the rest. */
  nameRevision(id: string, at: number, name: string): Promise<void>
  /** Takes in a sheet from elsewhere, with its revisions, where there is none of its id. False: there is one. */
  import(sheet: RawSheet, past: readonly RawRevision[]): Promise<boolean>
  /** Adds to a sheet's revisions those that are not among them. */
  importRevisions(id: string, past: readonly RawRevision[]): Promise<void>
  /** A setting of this browser: a plain value under a name. */
  setting(name: string): Promise<unknown>
  saveSetting(name: string, value: unknown): Promise<void>
  /**
   * Gives up what is under way and does nothing any more: a page put to sleep in the middle of a transaction would have
   * every later page wait for it.
   */
  sleep(): void
  close(): void
}
