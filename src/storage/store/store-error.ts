import { STORAGE_WORDS as WORDS } from '../words.ts'

/** What went wrong with saving or reading a sheet in this browser. */
export type StoreProblem =
  /** The disk, or the share of it this site may use, is full. */
  | 'full'
  /** The browser saves nothing for this page: a private window, or site data switched off. */
  | 'refused'
  /** Another tab has the database open in its older form. */
  | 'blocked'
  /** The database does not answer. */
  | 'silent'
  /** Another tab, or a later visit, has a newer Evenfield. */
  | 'outdated'
  /** The database was deleted under an open page. */
  | 'deleted'
  /** What was saved cannot be read back. */
  | 'unreadable'
  /** What is to be saved could not be read back. */
  | 'unwritable'
  /** Another tab or window has changed the sheet since it was opened here. */
  | 'elsewhere'
  | 'failed'

/** A failure to save or fetch a sheet, in words for the user. The sheet on screen is untouched. */
export class StoreError extends Error {
  readonly problem: StoreProblem
  /**
   * The stamp of a save whose transaction may have completed all the same, because the answer was lost. A later save
   * gives it as seen.
   */
  attempt?: string

  constructor(problem: StoreProblem, detail?: string, cause?: unknown) {
    super(detail === undefined ? WORDS[problem] : `${WORDS[problem]} ${detail}`, cause === undefined ? {} : { cause })
    this.name = 'StoreError'
    this.problem = problem
  }
}

const NAMED: Readonly<Record<string, StoreProblem>> = {
  QuotaExceededError: 'full',
  SecurityError: 'refused',
  NotAllowedError: 'refused',
  VersionError: 'outdated',
}

/** Turns what the browser threw into one of the messages above. */
export function asStoreError(error: unknown): StoreError {
  if (error instanceof StoreError) return error
  const { name = '', message = '' } = (error ?? {}) as { name?: string; message?: string }
  const problem = NAMED[name] ?? 'failed'
  return new StoreError(problem, problem === 'failed' && message !== '' ? `(${message})` : undefined, error)
}
