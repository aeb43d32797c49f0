import { RECORD_WORDS } from '../../language/checking/words.ts'
import type { Subject } from '../../language/index.ts'
import { plural } from '../../units/plural.ts'

/** The words of the guide to the functions. */
export const guideWords = {
  ...RECORD_WORDS,
  find: 'Find a function by any word',
  fetching: 'Loading…',
  found: 'Functions found',
  count: (n: number): string =>
    n === 0 ? 'No function matches these words. Try fewer words, or others.' : `${plural(n, 'function')}.`,
  put: 'Add to the sheet',
  notFetched: 'The published values could not be loaded. Close this and open it again.',
  heads: ['Quantity', 'Published', 'Computed', 'Difference', 'Source'],
  noDifference: 'none',
  differs: 'differs',
  allPublished: 'All published values on one page, to print',
}

/** The headings of the function guide, in its order. */
export const SUBJECT_TITLES: Readonly<Record<Subject, string>> = {
  'close-focus': 'Size on the sensor, the column, getting closer',
  sampling: 'Sampling and tiles',
  depth: 'Depth, diffraction, aperture',
  exposure: 'Exposure, filters, flash',
  lighting: 'Light and evenness',
  squareness: 'Square and level',
  colour: 'Tone and colour acceptance',
  care: 'Care of the original, of people and of the room',
  run: 'Planning a run',
  film: 'Transparent originals',
  maths: 'Plain mathematics and lists',
}
