import { plural } from '../../units/plural.ts'

/** The words of a cell in Build. */
export const formWords = {
  duplicate: 'Duplicate',
  sectionEarlier: 'Section earlier',
  sectionLater: 'Section later',
  select: (label: string): string => `Select ${label}`,
  grip: 'Drag to move the cell, press to select it',
  section: 'Section',
  editFormula: 'Edit the formula ',
  error: 'Error:',

  label: 'Label',
  entries: {
    quantity: 'A quantity',
    size: 'A size, width × height',
    list: 'Several values',
    choice: 'One of several options',
    'yes or no': 'Yes or no',
    text: 'Text',
    date: 'A date',
    kit: 'A piece of kit',
  },
  roles: { prose: 'Prose', caution: 'A caution', heading: 'A heading, which starts a section' },
  fineAdjustment: 'Show under Fine adjustments',
  atTheStand: 'Show at the stand',
  makeResult: 'Make it a result',
  makeGiven: 'Make it a given with this figure',
  fixed: 'Fixed: no suggestion changes it',
  sort: 'Sort of equipment',
  chooseSort: 'Choose a sort',
  fills: (figure: string): string => `${figure} fills in`,
  noGiven: 'no given',
  value: 'Value',
  hint: 'Hint',
  distribution: 'Within its limits, for a simulation',
  distributions: {
    rectangular: 'Every value equally likely (rectangular)',
    triangular: 'More likely towards the middle (triangular)',
    normal: 'Normally distributed',
  },
  coverage: 'The limits in standard deviations (k)',
  least: 'At least',
  most: 'At most',
  atLeast: (value: string): string => `at least ${value}`,
  atMost: (value: string): string => `at most ${value}`,
  figures: (n: number): string => plural(n, 'figure'),
  steps: (n: number): string => plural(n, 'step'),
  rows: (n: number): string => plural(n, 'row'),
  moreOptions: 'More options',
  figuresNow: 'Now:',
  formula: 'Formula',
  howMeasured: 'How it is measured',
  margin: 'Warning margin',
  condition: 'Passes when',
  messagePass: 'Message when it passes',
  messageFail: 'Message when it fails',
  insertFigure: '{name} inserts a figure',
  noteRole: 'This note is',
  heading: 'Heading',
  about: 'About the section',
  text: 'Text',
  shows: 'This drawing shows',
  inputRequired: (label: string, which: 'required' | 'one of'): string =>
    which === 'required' ? `${label}, required` : `${label}, one of these is required`,
  inputMissing: (label: string, reason: string): string => `${label}: ${reason}`,
  moves: 'Givens that change when a lamp is dragged',
  namesApart: 'names separated by commas',
}

/** The words of a range in Build. */
export const rangeFormWords = {
  steps: { 'even steps': 'In even steps', stops: 'By stops', marks: 'By marks or options' },
  variedGiven: 'Given to vary',
  secondGiven: 'Second given to vary, for a map',
  noSecond: 'None',
  secondFrom: 'Second, from',
  secondTo: 'Second, to',
  secondCount: 'Second, number of steps',
  side: (label: string, side: string): string => `${label}, ${side}`,
  chooseGiven: 'Choose a given',
  stepping: 'Steps',
  perStop: 'Values per stop',
  stepCount: 'Number of steps',
  countRange: 'The number of steps must be a whole number from 1 to 200.',
  result: 'Result',
  nextResult: 'Next result',
  removeResult: 'None: remove this result',
  chooseResult: 'Choose a result',
}

/** The words of a run in Build. */
export const runFormWords = {
  required: ', required',
  otherwise: (value: string): string => `, ${value} if empty`,
  table: 'Table of originals',
  noTable: 'This sheet has no table yet',
  none: 'None',
  overRow: 'Formulas for one row: they can use its columns by name and the cells of the sheet.',
}

/** The words of a list of steps in Build. */
export const stepsFormWords = {
  nothing: 'nothing',
  noLonger: (name: string): string => `${name}, no longer in the sheet`,
  earlierStep: (number: number): string => `Earlier, step ${number}`,
  laterStep: (number: number): string => `Later, step ${number}`,
  step: (number: number): string => `Step ${number}: `,
  task: 'Task',
  reading: 'Reading',
  removeStep: (number: number): string => `Remove step ${number}`,
  add: 'Add a step',
}

/** The words of a table in Build. */
export const tableFormWords = {
  entries: {
    quantity: 'A quantity',
    text: 'Text',
    choice: 'One of several options',
    tick: 'A tick',
    date: 'A date',
    time: 'A time of day',
    'date and time': 'A date, with or without a time',
    formula: 'Computed by a formula',
  },
  heading: 'Heading',
  rowFormula: 'Formula, from the other columns and the sheet',
  emptyIfUsedIsEmpty: 'May be empty if a column it uses is empty',
  mayBeEmpty: 'May be empty',
  usual: 'What an empty field takes',
  removeColumn: 'Remove the column',
  footer: 'Footer',
  share: 'Share',
  rowsWhere: 'of the rows where',
  addFooter: 'Add a footer',
  columns: 'Columns',
  column: 'Column: ',
  addColumn: 'Add a column',
  rowsElsewhere: 'Enter rows, or import a table, under Fill in.',
}

/** The words of variants in Build. */
export const variantsFormWords = {
  varied: 'Givens that vary',
  varyMore: 'Vary another given',
  compared: 'Results compared',
  compareMore: 'Compare another result',
  chooseResult: 'Choose a result or a check',
  remove: (title: string): string => `Remove ${title}`,
  variant: (number: number): string => `variant ${number}`,
}
