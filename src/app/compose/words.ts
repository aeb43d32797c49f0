import { agree, listText, plural, shortList } from '../../units/plural.ts'
import { asksNothing } from '../common/words.ts'

const MOST_LISTED = 9

const quoted = (text: string): string => `“${text}”`

export const composeWords = {
  addASection: 'Add a section',
  search: 'Search for a section',
  cancel: 'Cancel',
  found: (n: number): string => `${plural(n, 'section')} found.`,
  noMatch: (query: string): string => `No section matches “${query}”. Try another word.`,
  partlyMatches: (query: string): string => `No section matches all of “${query}”. The closest:`,
  alreadyInSheet: 'Already in this sheet.',
  missing: 'This section no longer exists. Reload the page.',
  adding: (title: string): string => `Add: ${title}`,
  headings: (headings: readonly string[]): string =>
    `It is added under the ${agree(headings.length, 'heading', 'headings')} ${listText(headings.map(quoted))}.`,
  usesNothing: 'It shares no figures with your sheet.',
  uses: (labels: readonly string[]): string => `It uses your ${shortList(labels.map(quoted), MOST_LISTED)}.`,
  clashes: (n: number): string =>
    `${plural(n, 'name')} ${agree(n, 'is', 'are')} already used in your sheet, perhaps for the same thing.`,
  asks: (labels: readonly string[]): string => `It asks for ${shortList(labels.map(quoted), MOST_LISTED)}.`,
  asksNothing,
  /** A part of the sheet gives way to another that decides the same. */
  replaces: (part: string, by: string): string => `${quoted(by)} replaces ${quoted(part)}.`,
  /** A part of a job that would ask anew what the sheet has. */
  instead: (part: string, of: string): string =>
    `It brings ${quoted(part)} instead of ${quoted(of)}, which would ask for sizes that your sheet already has. You can still add ${quoted(of)} by itself.`,
  changes: (changes: readonly string[]): string => `It changes: ${changes.join('; ')}.`,
  change: (label: string, before: string, after: string): string => `${label} ${before} → ${after}`,
  arrange: 'Arrange by parts',
  aboutOlder:
    'This sheet is from an earlier version. Arranged by parts, its sections share their figures and cannot contradict each other.',
  aboutArranging: 'Your figures, measured values and added cells stay. One Undo reverses it.',
  anotherSetUp: 'Another set-up',
  aboutSetUps:
    'It starts as a copy of the first. Original, kit, files and care are shared; frames, time and the light received are added up over all set-ups.',
  removeSetUp: (title: string): string => `Remove “${title}”`,
  removingSetUp: (title: string): string => `Remove: ${title}`,
  removes: (sections: readonly string[]): string =>
    `It removes ${plural(sections.length, 'section')}: ${listText(sections)}. What you filled in comes back if you add it again.`,
  removeIt: 'Remove this set-up',
  nothingNew: 'Everything in this section is already in your sheet.',
  confirm: 'Add it',
  another: 'Choose another section',
  allSame: 'They are all the same',
  allBoth: 'Keep both of each',
  nameUsed: (label: string, name: string): string => `“${label}”: your sheet already has a cell named “${name}”.`,
  cannotMerge: (why: string, newName: string): string =>
    `They cannot be merged: ${why}. The new one is named “${newName}”.`,
  /** A given of the sheet that the section computes; what it was filled in with, and its label there, where they say more. */
  givenIsComputed: (label: string, value: string, otherLabel: string): string =>
    `“${label}”: you fill it in${value ? ` (now ${value})` : ''}; this section computes it${otherLabel ? `, as “${otherLabel}”` : ''}.`,
  keepBoth: 'Keep both',
  keepBothAs: (newName: string): string => `Keep both: the new one is named “${newName}”`,
  compute: 'Compute it',
  computeAndMeasure: 'Compute it, and keep your figure as the measured value',
  computeAndDrop: 'Compute it, and delete your figure',
  keepFilling: 'Keep filling it in, without the computed value',
  same: 'They are the same: use yours',
}
