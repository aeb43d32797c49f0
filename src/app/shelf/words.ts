import type { CheckCounts } from '../../storage/store/types.ts'
import { listText, plural } from '../../units/plural.ts'
import { actOn, removedText, stateTexts } from '../common/words.ts'

export const shelfWords = {
  studioTemplates: 'Studio templates',
  about:
    'Evenfield works out how to photograph flat originals: framing, light, exposure, and whether the result passes.',
  question: 'What are you photographing?',
  choices: 'What you are photographing',
  answers: 'Compose a sheet from a few answers',
  other: 'Something else: an empty sheet',
  search: 'Or search in your own words',
  examples: 'glare, book, stamp, evenness',
  inExample: (figures: string): string => `In the example: ${figures}`,
  start: 'Start with your own figures',
  seeExample: 'See the example',
  way: (way: string, job: string): string => `${way}: ${job}`,
  noMatch: (query: string): string => `No job matches “${query}”. Try another word, `,
  showAll: 'show all jobs',
  orStart: ', or start with ',
  emptySheet: 'an empty sheet',
  partlyMatches: (query: string): string => `No job matches all of “${query}”. The closest:`,
  found: (n: number): string => `${plural(n, 'job')} found.`,
  yourSheets: 'Your sheets',
  older: (n: number): string => plural(n, 'older sheet'),
  savedAt: (at: string): string => `saved ${at}`,
  /** The states there are, the worst first. */
  checks: (counts: CheckCounts): string => {
    const states = stateTexts(counts)
    return states.length > 0 ? `Checks: ${listText(states)}` : 'No checks'
  },
  sortBy: 'Sort by',
  orders: { saved: 'Last saved', job: 'Job', checks: 'Checks that fail' },
  archive: 'Archive',
  unarchive: 'Move out of the archive',
  archived: (n: number): string => `Archive (${n})`,
  removed: removedText,
  undo: 'Undo',
  duplicate: 'Duplicate',
  remove: 'Remove',
  act: actOn,
  copyOf: (title: string): string => `${title}, copy`,
  openFile: 'Open a file',
  aboutFiles: 'You can choose several files or a backup, or drop them on the page.',
  removedSheets: (n: number): string => `Removed sheets (${n})`,
  backup: 'Backup',
}

/** The most common originals, as buttons on the shelf, with the words each searches for. */
export const SEARCHES: readonly (readonly [label: string, query: string])[] = [
  ['A flat sheet', 'flat sheet'],
  ['Framed or glazed', 'framed'],
  ['A bound volume', 'book'],
  ['Too large for one frame', 'too big'],
  ['Something small', 'small'],
  ['Slides or negatives', 'slides'],
  ['A list of originals', 'list'],
  ['Only a phone', 'phone'],
]
