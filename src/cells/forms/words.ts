import { atLeast, atMost } from '../../language/values/words.ts'
import { plural } from '../../units/plural.ts'
import { openedWords } from '../opened/words.ts'
import { cellWords } from '../shared/words.ts'

const oneOfSeveral = 'One of several options'

/** The words of a cell in Build. */
export const formWords = {
  duplicate: 'Duplicate',
  sectionUp: 'Move section up',
  sectionDown: 'Move section down',
  select: (label: string): string => `Select ${label}`,
  grip: 'Drag to move the cell, press to select it',
  section: 'Heading',
  editFormula: 'Edit the formula ',
  error: 'Error:',

  label: 'Label',
  title: 'Title',
  unit: 'Unit',
  filledWith: 'Filled in with',
  offers: 'Options',
  oneALine: 'one per line',
  noLongerThere: (name: string): string => `${name}, no longer in the sheet`,
  entries: {
    quantity: 'A quantity',
    size: 'A size, width × height',
    list: 'Several values',
    choice: oneOfSeveral,
    'yes or no': 'Yes or no',
    text: 'Text',
    date: 'A date',
    kit: 'A piece of kit',
  },
  roles: { prose: 'Text', caution: 'Caution', heading: 'Heading, which starts a section' },
  fineAdjustment: 'Show under Fine adjustments',
  atTheStand: cellWords.atTheStand,
  locked: 'Locked at the stand',
  makeResult: 'Make it a result',
  makeGiven: 'Make it a given with this figure',
  whole: 'Whole numbers only',
  fixed: 'Fixed: no suggestion changes it',
  sort: 'Kind of equipment',
  chooseSort: 'Choose a kind',
  goesInto: (figure: string): string => `${figure}: goes into`,
  noGiven: 'no given',
  value: 'Value',
  hint: 'Hint',
  distribution: 'Distribution within its limits, for a simulation',
  distributions: {
    rectangular: 'Every value equally likely (rectangular)',
    triangular: 'More likely towards the middle (triangular)',
    normal: 'Normally distributed',
  },
  coverage: 'Limits in standard deviations (k)',
  least: 'Lowest value allowed',
  most: 'Highest value allowed',
  atLeast,
  atMost,
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
  noteRole: 'Kind of note',
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
  varied: 'Given to vary, or column to plot over',
  secondGiven: 'Second given to vary, for a map',
  noSecond: 'None',
  secondFrom: 'Second given, from',
  secondTo: 'Second given, to',
  secondCount: 'Second given, number of steps',
  side: (label: string, side: string): string => `${label}, ${side}`,
  chooseVaried: 'Choose a given or a column',
  chooseGiven: 'Choose a given',
  valuesOf: (column: string): string => `Through the values of ${column}`,
  stepping: 'Steps',
  perStop: 'Values per stop',
  stepCount: 'Number of steps',
  countRange: 'The number of steps must be a whole number from 1 to 200.',
  result: 'Result',
  nextResult: 'Next result',
  removeResult: 'None: remove this result',
  chooseResult: 'Choose a result',
  column: 'Column',
  nextColumn: 'Next column',
  removeColumn: 'None: remove this column',
  chooseColumn: 'Choose a column',
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
  stepUp: (number: number): string => `${openedWords.up}, step ${number}`,
  stepDown: (number: number): string => `${openedWords.down}, step ${number}`,
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
    choice: oneOfSeveral,
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
  usual: 'Value of an empty field',
  removeColumn: 'Remove the column',
  footer: 'Footer',
  share: 'Percentile',
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
