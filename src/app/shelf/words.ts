import { plural } from '../../units/plural.ts'
import { cellsText, when } from '../common/words.ts'

export const shelfWords = {
  about:
    'Evenfield works out how to photograph flat originals: framing, light, exposure, and whether the result passes.',
  question: 'What are you photographing?',
  choices: 'What you are photographing',
  other: 'Something else: an empty sheet',
  search: 'Or search in your own words',
  examples: 'glare, book, stamp, evenness',
  inExample: (figures: string): string => `In the example: ${figures}`,
  noMatch: (query: string): string => `No job matches “${query}”. Try another word, `,
  showAll: 'show all jobs',
  orStart: ', or start with ',
  emptySheet: 'an empty sheet',
  partlyMatches: (query: string): string => `No job matches all of “${query}”. The closest:`,
  found: (n: number): string => `${plural(n, 'job')} found.`,
  yourSheets: 'Your sheets',
  older: (n: number): string => plural(n, 'older sheet'),
  sheet: (cells: number, saved: Date): string => `${cellsText(cells)}, saved ${when(saved)}`,
  removed: (title: string): string => `“${title}” was removed.`,
  undo: 'Undo',
  duplicate: 'Duplicate',
  remove: 'Remove',
  act: (act: string, title: string): string => `${act} ${title}`,
  copyOf: (title: string): string => `${title}, copy`,
  openFile: 'Open a file',
  aboutFiles: 'You can choose several files or a backup, or drop them on the page.',
  removedSheets: (n: number): string => `Removed sheets (${n})`,
  backup: 'Backup',
}
