import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import { saveAsFile, saveCopy, savedAsFile } from '../common/words.ts'

/** The sentences of an open sheet's session, as users meet them. */
export const sessionWords = {
  elsewhere: 'This sheet is open in another tab or window. You can read it here; changes made there appear here too.',
  taken: 'Another tab or window has taken this sheet over. You can read it here; changes made there appear here too.',
  changed: 'Another tab or window changed this sheet meanwhile.',
  rescued: 'What you typed here last is not in the sheet that another tab saved. It is saved among the revisions.',
  notRescued: 'What was typed here last is not saved yet. Saving it among the revisions is retried automatically.',
  showRescued: 'Show revisions',
  takeOver: 'Take over',
  takeBack: 'Take it back',
  saveCopy,
  unsavedRevision: 'Typed in another tab, not saved in the sheet',
  openSheet: 'Open the sheet',
  tryAgain: 'Try again',
  saveAsFile,
  savedAsFile,
  noSuchSheet: 'There is no such sheet in this browser. It may be saved in another one.',
  nothingSaved: 'Nothing is saved in this browser.',
} as const

const called = (title: string): string => `“${title || UNTITLED_SHEET}”`

export const unsavedText = (title: string, message: string): string =>
  `${called(title)} is not saved. ${message}`.trim()
export const rescuedText = (title: string): string =>
  `Another tab changed ${called(title)} before what was typed here was saved. It is saved among the revisions of the sheet.`
