import { count, plural } from '../../units/plural.ts'

/** Sentences about ranges, variants and comparisons. Each says what is wrong and what to do. */

export const rangeOnlyOfQuantity = 'Only a given with a single quantity can be varied.'
export const tooManyValues = (values: number, most: number): string =>
  `There would be ${count(values)} values; at most ${count(most)} are computed. Use larger steps.`
export const tooManyPairs = (pairs: number, most: number): string =>
  `There would be ${count(pairs)} pairs of values; at most ${count(most)} are computed. Use larger steps.`
export const tooSlow = (done: number, values: number): string =>
  `This result takes long to compute: ${count(done)} of ${count(values)} values took a second. Use fewer values, or choose another result.`
export const emptyRange = 'No value lies in this range. Change where it begins or ends, or the limits of the given.'
export const rangeOfUnknown = 'Fill in the given, or give it a unit.'
export const endMissing = (which: 'begins' | 'ends'): string => `Fill in where the range ${which}.`
export const endUnreadable = (which: 'begins' | 'ends', why: string): string =>
  `Where the range ${which} cannot be read: ${why}`
export const stopsAboveZero = 'A range in stops must begin and end above zero.'
export const noMarks = 'Only apertures and shutter times have marks. Add options to the given, or choose even steps.'

export const tooManyDifferent = (values: number, most: number): string =>
  `The column has ${count(values)} different values; at most ${count(most)} are computed. Choose even steps instead.`
export const noTable = (name: string): string => `There is no table “${name}” in this sheet. Choose another column.`
export const noColumn = (table: string, column: string): string =>
  `“${table}” has no column “${column}” with figures. Choose another one.`
export const chooseColumn = (table: string): string => `“${table}” is a table: choose one of its columns.`
export const choosePlotted = (table: string): string => `Choose the columns of “${table}” to plot, up to three.`
export const tableNotComputed = (table: string): string =>
  `“${table}” is not computed yet. Correct what it reports, or fill in what it needs.`
export const tableEmpty = (table: string): string => `“${table}” has no filled-in rows to plot.`
export const notPlotted = (column: string): string =>
  `“${column}” has no figures to plot over. Choose a column of quantities, dates or times.`
export const otherQuantity = (column: string): string =>
  `“${column}” has values of another kind than this given. Choose a column of the same kind of quantity.`

export const chooseResults = 'Choose the results to show, up to three.'
export const chooseGiven = 'Choose the given to vary.'
export const unreadableGiven = (label: string): string => `“${label}” cannot be read. Correct it, or give it a unit.`
export const noCell = (name: string): string => `There is no cell “${name}” in this sheet. Choose another one.`
export const notAGiven = (name: string): string => `“${name}” is not a given: only what is filled in can be varied.`
export const notDependent = (name: string, given: string): string =>
  `“${name}” is a given and does not depend on “${given}”.`
export const hasError = (label: string, why: string): string => `“${label}” has an error. ${why}`

export const now = 'Now'
export const needs = (names: readonly string[]): string => `needs ${names.join(', ')}`
export const needsFormula = 'needs its formula'

/** What kinds of thing differ, in the order they are listed. */
export const parts = {
  title: 'Title and job',
  givens: 'Givens',
  results: 'Results',
  checks: 'Checks',
  formulas: 'Formulas',
  tables: 'Tables',
  notes: 'Notes and drawings',
  cells: 'Cells',
} as const
export const states = {
  pass: 'passes',
  marginal: 'marginal',
  fail: 'fails',
  waiting: 'needs more figures',
  error: 'cannot be computed',
} as const
export const empty = 'empty'
export const titleLabel = 'Title'
export const jobLabel = 'Job'
export const orderLabel = 'Order'
export const variant = (number: number): string => `Variant ${number}`
export const called = (label: string): string => `called ${label}`
export const setUpThen = 'earlier settings'
export const setUpNow = 'changed settings'
export const measuredAgain = (what: string): string => `${what} again`
export const rows = (n: number): string => plural(n, 'row')
export const rowsThen = (n: number, fields: number): string => `${plural(n, 'row')}, ${plural(fields, 'field')} changed`
export const orderThen = 'earlier order'
export const orderNow = 'changed order'
export const noteTitles = { heading: 'Heading', caution: 'Caution', prose: 'Note' } as const

export const twoGivens = 'Choose two different givens to vary.'
export const chooseResult = 'Choose the result to show over both givens.'
export const chooseSide = (label: string, name: string): string =>
  `“${label}” is a size: vary “${name}.width” or “${name}.height”.`
export const notASize = (label: string, side: string): string => `“${label}” has no ${side}: it is not a size.`
export const fillSizeFirst = (label: string): string => `Fill in “${label}” first: the range varies one of its sides.`

/** What is said of a measured value that another one contradicts. */
export const contradicts = (label: string, measured: string, implied: string): string =>
  `contradicts ${label}, measured as ${measured}, which would make this ${implied}. Measure both again.`

/** What a range without a title is called, once the given it runs through is known. */
export const overRange = (label: string): string => `Over a range of ${label}`

/** What the map of a range over two givens is called. */
export const overTwo = (result: string, across: string, up: string): string => `${result} over ${across} and ${up}`

/** What is said of the worked examples of a sheet’s functions. */
export const exampleGives = (message: string): string => `What it should give cannot be read. ${message}`
export const notComputedYet = 'Not computed yet.'

export const asComputed = 'as computed'
/** How a measured figure differs from the computed one: `4 mm over`, `0.3 stop longer`. */
export const byAmount = (amount: string, side: 'over' | 'under' | 'longer' | 'shorter' | 'wider' | 'smaller'): string =>
  `${amount} ${side}`
export const byAmounts = (amount: string, side: 'over' | 'under', also: string): string => `${amount} ${side}, ${also}`
export const measuredAt = (when: string, by?: string): string => `measured ${when}${by ? ` by ${by}` : ''}`

/** The places of a sheet that are filled in at work. */
export const placeWords = {
  measuredOf: (label: string): string => `${label}, measured`,
  step: (n: number, text: string): string => `Step ${n}: ${text}`,
  field: (table: string, row: number, column: string): string => `${table}, row ${row}, ${column}`,
  ticked: 'ticked',
  notTicked: 'not ticked',
  framesTaken: (n: number): string => `${plural(n, 'frame')} taken`,
  pictureOf: (label: string): string => `${label}, picture`,
  areasMeasured: (file: string, areas: number): string => `${file}, ${plural(areas, 'area')} measured`,
} as const
