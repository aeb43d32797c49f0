import { plural } from '../units/plural.ts'

/** The sentences of the store, as users meet them. */
export const STORAGE_WORDS = {
  full: 'This browser has no room left for the sheet. Save it as a file, or erase removed sheets. Saving is retried automatically.',
  refused:
    'This browser saves nothing for this page (a private window, or site data is switched off). Save the sheet as a file before closing.',
  blocked:
    'Another tab has an older version of Evenfield open, and nothing can be saved until it is closed. To be safe, save the sheet as a file.',
  silent:
    'The storage of this browser does not respond. Close other tabs with Evenfield, or restart the browser. Saving is retried automatically; to be safe, save the sheet as a file.',
  outdated: 'Evenfield was updated in another tab. Save unsaved work as a file, then reload this tab.',
  deleted:
    'The sheets saved in this browser were deleted (its site data was cleared). An open sheet is saved again; a backup brings back the others.',
  unreadable: 'This saved sheet cannot be read.',
  unwritable: 'This sheet could not be opened again once saved, so it was not saved.',
  elsewhere: 'Another tab or window has changed this sheet since it was opened here.',
  failed: 'This browser could not save the sheet. Save it as a file. Saving is retried automatically.',
  shared: 'shared',
  backupDue: (sheets: number, when: string | undefined) =>
    when === undefined
      ? `No backup was made yet of ${plural(sheets, 'sheet')} saved in this browser.`
      : `${plural(sheets, 'sheet')} changed since the last backup, made ${when}.`,
} as const
