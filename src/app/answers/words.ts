import { plural, shortList } from '../../units/plural.ts'
import { asksNothing } from '../common/words.ts'

const MOST_LISTED = 9

export const answersWords = {
  title: 'Compose a sheet',
  about:
    'Answer what you know, in any order, and skip the rest. The sheet is composed as you answer; all of it can be changed later.',
  kind: 'What is it?',
  by: 'What do you photograph with?',
  camera: 'A camera and a lens',
  phone: 'A phone',
  several: 'How many are there?',
  one: 'One',
  alike: 'Several alike',
  job: 'Name of the job',
  aboutJob: 'Its reference or client; the list of your sheets shows it first.',
  yourSheet: 'The sheet',
  sections: 'Sections',
  figures: 'Figures so far',
  noFigures: 'Figures appear as you answer.',
  checks: 'Checks',
  asks: (labels: readonly string[]): string =>
    `It will ask for ${plural(labels.length, 'more figure')}: ${shortList(labels, MOST_LISTED)}.`,
  asksNothing,
  make: 'Make this sheet',
  clear: 'Clear all answers',
  composing: 'Composing the sheet',
  notComposed: (why: string): string => `The sheet could not be composed. ${why}`,
}
