import { count, plural } from '../../units/plural.ts'
import type { CheckOutcome } from '../../worksheet/index.ts'
import { clock } from '../common/words.ts'

export const sheetWords = {
  job: 'Job',
  aboutJob: 'reference, client, place',
  title: 'Title of the worksheet',
  readOnly: 'Read only',
  saved: (at: Date): string => `Saved ${clock(at)}`,
  savedShort: 'Saved',
  saving: 'Saving…',
  notSaved: 'Not saved',
  unchanged: 'No changes yet',
  saveFile: 'Save as a file',
  savedFile: 'Saved as a file.',
  undo: 'Undo',
  redo: 'Redo',
  find: 'Find',
  share: 'Share',
  revisions: 'Revisions',
  functions: 'Functions',
  light: 'Light',
  dim: 'Dim',
  allSheets: 'All sheets',
  menu: 'Menu',
  moreTools: 'More',
  faces: 'Faces of the sheet',
  fillIn: 'Fill in',
  atTheStand: 'At the stand',
  build: 'Build',
  keys: 'Keys and signs',
  sections: 'Sections',
  checks: 'Checks',
  /** How many cells are in a state: `1 fail`, `9 waiting`. */
  state: (state: CheckOutcome['state'], n: number): string =>
    state === 'error' ? plural(n, 'error') : `${count(n)} ${state}`,
  done: (done: number, of: number): string => `${count(done)} of ${count(of)}`,
}
