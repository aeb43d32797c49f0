import { count, listText, plural } from '../../units/plural.ts'

const MAX_LISTED = 8

export const answersWords = {
  title: 'What have you got?',
  about:
    'Answer what you know, in any order, and skip the rest. The sheet is composed as you answer; all of it can be changed later.',
  kind: 'What is it?',
  by: 'What do you photograph with?',
  camera: 'A camera and a lens',
  phone: 'Only a phone',
  job: 'Name of the job',
  aboutJob: 'Its reference or its client: it leads the list of your sheets.',
  yourSheet: 'Your sheet',
  sections: 'Sections',
  figures: 'So far',
  noFigures: 'Figures appear as you answer.',
  checks: 'Checks',
  asks: (labels: readonly string[]): string => {
    const rest = labels.length - MAX_LISTED
    const shown = labels.slice(0, MAX_LISTED)
    return `It will ask for ${plural(labels.length, 'more figure')}: ${listText(rest > 0 ? [...shown, `${count(rest)} others`] : shown)}.`
  },
  asksNothing: 'It asks for nothing more.',
  make: 'Make this sheet',
  clear: 'Clear all answers',
  composing: 'Composing the sheet',
  notComposed: (why: string): string => `The sheet could not be composed. ${why}`,
}
