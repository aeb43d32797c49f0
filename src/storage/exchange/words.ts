import { agree, count, plural } from '../../units/plural.ts'
import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'

const askAgain = 'Ask for it again, or for the file.'

/** The sentences on files and links, as users meet them. */
export const EXCHANGE_WORDS = {
  studioSetTaken: (templates: number): string =>
    templates === 0 ? '' : `${plural(templates, 'template')} of the studio imported.`,
  filesCameIn: (n: number) => `${plural(n, 'sheet')} imported.`,
  yoursUnchanged: 'Your own sheets are unchanged.',
  manyFiles: (n: number) => `You chose ${plural(n, 'file')}. Import a sheet from each of them?`,
  theFile: 'The file',
  notRead: (file: string) => `${file} could not be read: it was moved, or this browser has no access to it.`,
  notText: (file: string) => `${file} is not a text file (its bytes are not UTF-8).`,
  backupTooLarge: (file: string) => `${file} is larger than 500 MB.`,
  fileTooLarge: (file: string) => `${file} is larger than 20 MB, which no worksheet needs.`,
  notOpened: (file: string, why: string) => `${file} cannot be opened. ${why}`,
  notWritten: (file: string, why: string) => `${file} could not be written: ${why}`,
  sameServerOnly:
    'Only sheets on the same server as this page can be opened by a link. Save the file, then open the saved file.',
  noAnswer: (file: string) => `${file} could not be loaded: the server does not respond. Try again later.`,
  notOnServer: (file: string, status: number) => `${file} is not on the server, or it may not be read (${status}).`,
  linkBroken: `This link was cut short or altered on the way. ${askAgain}`,
  linkEmpty: `This link contains no worksheet, or only a part of one. ${askAgain}`,
  linkUnpacksTooLarge: 'This link unpacks to more than 2 MB, which no worksheet needs. Ask for the file instead.',
  linkTooLong: 'This link is longer than any worksheet needs. Ask for the file instead.',
  linkNewer: (version: number, read: number) =>
    `This link was made by a newer version of Evenfield (version ${version} of links, this one reads up to ${read}). Reload the page to get the latest version, then open the link again.`,
  linkBaseMissing: (job: string) =>
    `This link was made from a version of the job “${job}” that is not here. Reload the page to get the latest version, then open the link again, or ask for the file.`,
  linkUnread: (why: string) => `The worksheet in this link cannot be read. ${why}`,
  linkCarried: (characters: string) => `About ${characters} characters; any messenger or mail program can send it.`,
  linkLong: (characters: string) =>
    `About ${characters} characters; some messengers and mail programs cut an address past about 2\u202f000. Send the file instead if this link arrives cut short.`,
} as const

/** The sentences on copies that come back, and on what a copy carries. */
export const COPY_WORDS = {
  titleOf: 'Title',
  jobOf: 'Job',
  readers: 'Initials of the person who measured',
  picturesOf: (label: string) => `${label}, names of files`,
  manyTexts: (texts: readonly string[]) =>
    texts.length === 1 ? (texts[0] as string) : `${texts[0]} and ${plural(texts.length - 1, 'more text')}`,
  carries: 'The link and the file contain these texts:',
  received: 'as it came',
} as const

/** The sentences on backups, and on what the browser may delete. */
export const BACKUP_WORDS = {
  untitled: (number: number) => `Sheet ${number}`,
  persistent: 'This browser saves your sheets until you delete them or its site data.',
  bestEffort: 'This browser may delete saved sheets when disk space runs low: it has not granted permanent storage.',
  persistenceUnknown: 'This browser does not say whether it may delete saved sheets when disk space runs low.',
  deletesUnvisited:
    'It also deletes what a page has saved when you have not opened the page for seven days. Put Evenfield on the home screen, where that does not apply, or save backups.',
  othersDelete:
    'Sheets are saved in this browser on this device only. Clearing site data deletes them, and some browsers, mainly on phones and tablets, delete what a page has saved when it has not been opened for a week.',
  noBackupYet: 'No backup was made in this browser yet.',
  lastBackup: (when: string) => `The last backup was made ${when}.`,
  backupSaved: (unreadable: readonly string[]) =>
    unreadable.length === 0
      ? 'Saved.'
      : `Saved. ${plural(unreadable.length, 'sheet')} cannot be read and ${agree(unreadable.length, 'is', 'are')} in the backup as raw data: ${unreadable.map((title) => `“${title || UNTITLED_SHEET}”`).join(', ')}.`,
  backupAbout:
    'One file with every sheet saved in this browser, removed ones too, and your kit. Opened here or in another browser, it adds what is missing; a sheet that differs is added as a copy, and nothing of yours is changed.',
  withRevisions: 'With their revisions',
  saveBackup: 'Save a backup',
  askPersistence: 'Ask for permanent storage again',
  backupUnread: 'This backup cannot be read.',
  noBackup: 'This is not a backup.',
  newerBackup: 'This backup was made by a newer version of Evenfield. Reload the page to get the latest version.',
  oddId: 'Its id is missing or was not made by Evenfield.',
  emptyBackup: 'The backup has no sheets.',
  sheetUnread: (title: string, why: string) => `“${title}” cannot be read. ${why}`,
  sheetRaw: (title: string, why: string) =>
    `“${title}” cannot be read and was imported as it is; open it to save it as a file. ${why}`,
  fromBackup: (title: string) => `${title}, from a backup`,
  cameIn: (n: number) => `${plural(n, 'sheet')} imported from the backup.`,
  cameAsCopies: (n: number) =>
    n === 1
      ? '1 sheet differs from the one here and was imported as a copy.'
      : `${plural(n, 'sheet')} differ from those here and were imported as copies.`,
  wereHere: (n: number) => `${plural(n, 'sheet')} ${agree(n, 'was', 'were')} here already.`,
  manyInBackup: (sheets: number, fresh: number) =>
    `This backup has ${plural(sheets, 'sheet')}; ${count(fresh)} of them ${agree(fresh, 'is', 'are')} not in this browser. Import them?`,
} as const
