import { plural } from '../units/plural.ts'

/** The sentences of this room, as users meet them. */
export const WORDS = {
  studioSetTaken: (templates: number): string =>
    templates === 0 ? '' : `${plural(templates, 'template')} of the studio came in.`,
  full: 'This browser has no room left for the sheet. Save it as a file, or erase removed sheets. Saving is tried again by itself.',
  refused:
    'This browser saves nothing for this page (a private window, or site data is switched off). The sheet works; save it as a file before closing.',
  blocked:
    'Another tab has an older Evenfield open, and nothing can be saved until that tab is closed. Saving is then tried again by itself; to be safe, save the sheet as a file.',
  silent:
    'The storage of this browser does not answer. Close other tabs with Evenfield; if that does not help, restart the browser. Saving is tried again by itself; to be safe, save the sheet as a file.',
  outdated:
    'Evenfield was updated in another tab. Save the sheet as a file if it has unsaved work, then reload this tab.',
  deleted:
    'The sheets saved in this browser were deleted while this page was open (its site data was cleared). A sheet that is open is saved again; a backup brings back the others.',
  unreadable: 'This saved sheet cannot be read.',
  unwritable: 'This sheet could not be opened again once saved, so it was not saved.',
  elsewhere: 'Another tab or window has changed this sheet since it was opened here.',
  failed: 'This browser could not save the sheet. Save it as a file. Saving is tried again by itself.',
  measured: 'measured',
  step: (n: number, text: string) => `Step ${n}: ${text}`,
  field: (table: string, row: number, column: string) => `${table}, row ${row}, ${column}`,
  ticked: 'ticked',
  notTicked: 'not ticked',
  titleOf: 'Title',
  jobOf: 'Job',
  manyTexts: (texts: readonly string[]) =>
    texts.length === 1 ? (texts[0] as string) : `${texts[0]} and ${plural(texts.length - 1, 'more text')}`,
  carries: 'The link and the file carry these texts:',
  shared: 'shared',
  received: 'as it came',
  persistent: 'This browser has agreed to save your sheets until you delete them or its site data.',
  bestEffort:
    'This browser may delete saved sheets by itself when the disk runs short. It was asked not to, and has not agreed.',
  persistenceUnknown:
    'This browser does not say whether it may delete saved sheets by itself when the disk runs short.',
  deletesUnvisited:
    'It also deletes what a page has saved when you do not open the page for seven days. Put Evenfield on the home screen, where that does not apply, or save backups.',
  othersDelete:
    'Sheets are saved in this browser on this device only. Clearing site data deletes them, and some browsers, on phones and tablets above all, delete what a page has saved when it was not opened for a week.',
  noBackupYet: 'No backup was made in this browser yet.',
  lastBackup: (when: string) => `The last backup was made ${when}.`,
  backupDue: (sheets: number, when: string | undefined) =>
    when === undefined
      ? `No backup was made yet of ${plural(sheets, 'sheet')} saved in this browser.`
      : `${plural(sheets, 'sheet')} changed since the last backup, made ${when}.`,
  backupSaved: (unreadable: readonly string[]) =>
    unreadable.length === 0
      ? 'Saved.'
      : `Saved. ${plural(unreadable.length, 'sheet')} cannot be read and ${unreadable.length === 1 ? 'is' : 'are'} in the backup as raw data: ${unreadable.map((title) => `“${title || 'Untitled worksheet'}”`).join(', ')}.`,
  backupAbout:
    'One file with every sheet saved in this browser, removed ones too, and your kit. Opened here or in another browser, it brings in what is missing; a sheet that differs comes in as a copy, and nothing of yours is changed.',
  withRevisions: 'With their revisions',
  saveBackup: 'Save a backup',
  askPersistence: 'Ask the browser again',
  backupUnread: 'This backup cannot be read.',
  noBackup: 'This is not a backup.',
  newerBackup: 'This backup was made by a newer Evenfield. Reload the page to get the newest.',
  oddId: 'Its id is missing or is not one of ours.',
  emptyBackup: 'The backup has no sheets.',
  sheetUnread: (title: string, why: string) => `“${title}” cannot be read. ${why}`,
  sheetRaw: (title: string, why: string) =>
    `“${title}” cannot be read and came in as it is; open it to save it as a file. ${why}`,
  fromBackup: (title: string) => `${title}, from a backup`,
  cameIn: (n: number) => `${plural(n, 'sheet')} came in from the backup.`,
  cameAsCopies: (n: number) =>
    n === 1
      ? '1 sheet differs from the one here and came in as a copy beside it.'
      : `${plural(n, 'sheet')} differ from those here and came in as copies beside them.`,
  wereHere: (n: number) => `${plural(n, 'sheet')} ${n === 1 ? 'was' : 'were'} here already.`,
  manyInBackup: (sheets: number, fresh: number) =>
    `This backup has ${plural(sheets, 'sheet')}; ${fresh} of them ${fresh === 1 ? 'is' : 'are'} not in this browser. Bring them in?`,
  filesCameIn: (n: number) => `${plural(n, 'sheet')} came in.`,
  yoursUnchanged: 'Your own sheets are unchanged.',
  bringIn: 'Bring them in',
  cancel: 'Cancel',
  manyFiles: (n: number) => `You chose ${plural(n, 'file')}. Bring a sheet in from each of them?`,
} as const
