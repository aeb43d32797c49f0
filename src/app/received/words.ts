import { agree, plural } from '../../units/plural.ts'
import { cellsText, saveCopy } from '../common/words.ts'

export const receivedWords = {
  sent: (cells: number): string => `Someone sent you this worksheet of ${cellsText(cells)}.`,
  served: (cells: number): string => `This worksheet of ${cellsText(cells)} is on this server.`,
  figuresOnly:
    'It contains givens and results only. The results have no formulas, so they do not change with the givens.',
  aboutCopy: 'Once saved, it is your own copy in this browser; your other sheets stay as they are.',
  inLink: 'The link contains all of it.',
  figures: 'Figures of the worksheet',
  save: saveCopy,
  saveSeparate: 'Save a separate copy',
  leave: 'Cancel',
  isHome: (title: string): string => `This is a copy of your sheet “${title}”, which is in this browser.`,
  differs: (n: number): string =>
    n === 0
      ? 'All measurements and ticks in it are the same as in your sheet.'
      : `${plural(n, 'measurement or tick', 'measurements and ticks')} ${agree(n, 'differs', 'differ')}. Choose what your sheet takes over; one Undo reverses it.`,
  clash: 'changed in both',
  stays: (n: number): string => `${plural(n, 'place')} changed only in your sheet ${agree(n, 'stays', 'stay')}.`,
  others: (n: number): string =>
    `${plural(n, 'cell')} ${agree(n, 'differs', 'differ')} in something else, such as a formula or a label; ${agree(n, 'it stays', 'they stay')} as in your sheet.`,
  place: 'Place',
  here: 'In your sheet',
  there: 'In the copy',
  before: 'When it was sent',
  unknown: 'not known',
  empty: 'empty',
  takeOver: (what: string): string => `Take over ${what}`,
  elsewhere:
    'Your sheet is open in another tab or window, so nothing was taken over. Close it there, then open the copy again.',
  unreadable: 'This sheet cannot be read',
  aboutUnreadable:
    'It is still saved in this browser just as it is. Save it as a file, or restore one of its revisions.',
  saveUnchanged: 'Save it unchanged',
  savedUnchanged: 'Saved unchanged.',
  revisions: 'Revisions',
  noRevisions: 'It has no revision that can be read.',
  restore: 'Restore',
  restoreAt: (when: string): string => `Restore the revision of ${when}`,
  couldNotBeRead: 'before a restore: could not be read',
  newerReadOnly: 'This sheet was made by a newer version of Evenfield; here it can only be read.',
  newer: (version: number, read: number): string =>
    `This sheet was made by a newer version of Evenfield: its version is ${version}, this one reads up to ${read}. Here you can read what this version can show; nothing in it is changed.`,
  notShown: (n: number): string => `${plural(n, 'cell')} of a kind not known here ${agree(n, 'is', 'are')} not shown.`,
  reload: 'Reload the page to get the latest version, then open it again.',
  leaveNewer: 'Close',
  shows: (cells: number, checks: string): string => `It shows ${cellsText(cells)}. ${checks}`,
}
