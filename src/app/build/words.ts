import { count, plural, shortList } from '../../units/plural.ts'
import { cellsText } from '../common/words.ts'

const MAX_NAMES = 4

export const buildWords = {
  add: 'Add ',
  addACell: 'Add a cell',
  kinds: {
    given: 'A given',
    result: 'A result',
    check: 'A check',
    note: 'A note',
    section: 'A heading',
    drawing: 'A drawing',
    steps: 'Steps',
    table: 'A table',
    range: 'A range',
    variants: 'Variants',
    run: 'A run',
    frame: 'A measured picture',
    function: 'A function',
  },
  firstCells: 'This sheet is empty. Start with these cells:',
  nextCells: 'Next:',
  aboutGiven: 'something you know or measure: a size, a lens, a distance',
  aboutResult: 'a figure computed by a formula',
  aboutCheck: 'a condition the figures must meet, with a message',
  howToMove: 'Drag the dots before a cell to move it; press them to select it.',
  howToAdd: 'L types a cell as a line, Alt N adds one below, Alt O opens one, ? lists all keys.',
  typeACell: 'Type a cell',
  typeACellAs: 'border = 10 mm, scale = sensor.width / page, ? fits: page < 1 m | Too wide. Enter adds it.',
  notAdded: (why: string): string => `Not added: ${why.replace(/\.$/, '')}. The text is unchanged.`,
  hasFunction: 'this sheet has this function already',
  pasteCells: 'Paste cells',
  moved: (label: string, place: number, of: number, above: string): string =>
    `${label}: moved to ${count(place)} of ${count(of)}, ${above ? `below ${above}` : 'first'}.`,
  selection: 'Selected cells',
  selected: (n: number): string => `${cellsText(n)} selected`,
  copy: 'Copy',
  copyLines: 'Copy as lines',
  cut: 'Cut',
  pasteBelow: 'Paste below',
  remove: 'Remove',
  selectAll: 'Select all',
  done: 'Done',
  copyByHand: 'This browser does not allow pages to copy. The text is selected: copy it here.',
  pasteByHand: 'Paste the cells here as text. They are added to the sheet at once.',
  nothingPasted: 'The pasted list contains no cells.',
  pasted: (n: number): string => `${cellsText(n)} added.`,
  tablePasted: (rows: number, columns: number): string =>
    `A table of ${plural(rows, 'row')} and ${plural(columns, 'column')} added.`,
  renamed: (pairs: readonly (readonly [before: string, after: string])[]): string =>
    `Names already in use were changed: ${shortList(
      pairs.map(([before, after]) => `“${before}” to “${after}”`),
      MAX_NAMES,
    )}.`,
  copied: (n: number): string => `${cellsText(n)} copied.`,
  wereCut: (n: number): string => `${cellsText(n)} cut.`,
  cellRemoved: (label: string): string => `${label}: removed.`,
  removed: (n: number): string => `${cellsText(n)} removed.`,
}
