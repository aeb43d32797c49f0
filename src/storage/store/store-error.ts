/** What went wrong with keeping a sheet in this browser. */
export type StoreProblem =
  /** The disk, or the share of it this site may use, is full. */
  | 'full'
  /** The browser keeps nothing for this page: a private window, or site data switched off. */
  | 'refused'
  /** Another tab holds the older form of what is kept. */
  | 'blocked'
  /** Another tab, or a later visit, has a newer Evenfield. */
  | 'outdated'
  /** What was kept cannot be read back. */
  | 'unreadable'
  /** Another tab or window has changed the sheet since it was opened here. */
  | 'elsewhere'
  | 'failed'

const WORDS: Readonly<Record<StoreProblem, string>> = {
  full: 'This browser has no room left to keep the sheet. Save it as a file, or remove sheets no longer needed, and it will be kept again.',
  refused:
    'This browser keeps nothing for this page (a private window, or site data is switched off). The sheet works; save it as a file before closing.',
  blocked:
    'Another tab has an older Evenfield open. Close that tab and reload this one; until then save the sheet as a file before closing.',
  outdated:
    'Evenfield was brought up to date in another tab. Save the sheet as a file if it has unsaved work, then reload this tab.',
  unreadable: 'This kept sheet cannot be read.',
  elsewhere: 'Another tab or window has changed this sheet since it was opened here.',
  failed: 'This browser could not keep the sheet. Save it as a file.',
}

/** A failure to keep or fetch a sheet, in words for the person at the stand. The sheet on screen is untouched. */
export class StoreError extends Error {
  readonly problem: StoreProblem

  constructor(trouble: StoreProblem, detail?: string, cause?: unknown) {
    super(detail === undefined ? WORDS[trouble] : `${WORDS[trouble]} ${detail}`, cause === undefined ? {} : { cause })
    this.name = 'StoreError'
    this.problem = trouble
  }
}

const NAMED: Readonly<Record<string, StoreProblem>> = {
  QuotaExceededError: 'full',
  SecurityError: 'refused',
  NotAllowedError: 'refused',
  VersionError: 'outdated',
}

/** Puts whatever the browser threw into the words above. */
export function asStoreError(error: unknown): StoreError {
  if (error instanceof StoreError) return error
  const { name = '', message = '' } = (error ?? {}) as { name?: string; message?: string }
  const trouble = NAMED[name] ?? 'failed'
  return new StoreError(trouble, trouble === 'failed' && message !== '' ? `(${message})` : undefined, error)
}
