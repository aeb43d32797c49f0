import { plural } from '../../units/plural.ts'
import { actOn, removedText } from '../common/words.ts'

export const kitWords = {
  yourKit: 'Your kit',
  about:
    'Your studio’s equipment. A sheet that asks for a piece of kit offers these and copies the figures, so that the sheet works on any computer.',
  empty: 'Your kit is empty. Add your equipment, or start with the generic kit and replace its figures with yours.',
  addGeneric: 'Add the generic kit',
  genericAdded: 'The generic kit was added. Replace its figures with yours.',
  removed: removedText,
  undo: 'Undo',
  edit: 'Edit',
  duplicate: 'Duplicate',
  remove: 'Remove',
  act: actOn,
  copyOf: (name: string): string => `${name}, copy`,
  name: 'Name',
  note: 'Note',
  unknown: 'unknown',
  done: 'Done',
  add: (aSort: string): string => `Add ${aSort}`,
  saveFile: 'Save the kit as a file',
  openFile: 'Add a kit from a file',
  added: (n: number, file: string): string => `${plural(n, 'piece')} added from ${file}.`,
  notSaved: (why: string): string => `Not saved: ${why}`,
  inFile: (file: string, why: string): string => `${file}: ${why}`,
}
