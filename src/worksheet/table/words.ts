import { agree, count } from '../../units/plural.ts'

/** Sentences about tables and what is imported into them. Each says what is wrong, where, and what to do. */

export const columnNeedsName = 'A column needs a name, so that formulas can use it.'
export const countIsRows = '“count” is the number of rows. Give the column another name, such as “number”.'
export const columnNameTaken = (name: string): string => `Another column is already named “${name}”.`
export const cycle = (path: readonly string[]): string =>
  `These columns depend on each other in a cycle: ${path.join(' → ')}. Break it in one of them.`
export const inColumn = (label: string, why: string): string => `In the column “${label}”: ${why}`
export const limitsIgnored = 'A column has no limits: what follows “±” is ignored.'

export const emptyField = 'This field is empty.'
export const otherKind = (kind: string, found: string): string => `This column takes ${kind}; this is ${found}.`
export const plainNumbers = (found: string): string =>
  `This column has no unit and takes plain numbers; this is ${found}.`
export const noFigure = (label: string): string => `“${label}” has no figure in this row.`
export const neededHere = (label: string): string => `“${label}” is empty in this row, and this formula needs it.`
export const ambiguousDate = (first: string, second: string): string =>
  `This may be ${first} or ${second}. Write the year first.`
export const dateAndTime = 'A date is written year-month-day, with or without a time, such as 2026-11-25 14:30.'

export const rows = (count: number): string => agree(count, 'row', 'rows')
export const countedOf = (counted: number, all: number): string => `${counted} of ${all}`
export const more = (rows: number): string => `${count(rows)} more`
export const rowLeftOut = (row: number, why: string): string => `Row ${row} is left out. ${why}`
export const rowsLeftOut = (rows: number, named: readonly string[], last: string, first: number, why: string): string =>
  `${count(rows)} rows are left out: ${named.join(', ')} and ${last}. The first, row ${first}: ${why}`

export const FOOTERS = {
  sum: 'Sum',
  mean: 'Mean',
  least: 'Minimum',
  greatest: 'Maximum',
  percentile: 'Percentile',
  count: 'Count',
} as const
export const percentile = (share: string): string => `${share} percentile`
export const onlyQuantities = (figure: string): string =>
  `Only a column of quantities has a ${figure}; this one can be counted.`
export const percentileShare = (usual: string, found: string): string =>
  `The share of a percentile must be from 0 % to 100 %, such as ${usual}; “${found}” is not.`

const SEPARATOR = 'Check the separator.'
export const tooLarge = (megabytes: number): string => `The table is larger than ${megabytes} MB. Import it in parts.`
export const workbook = 'This is a workbook. Save its sheet as CSV, or copy the fields and paste them.'
export const noTable = 'There is no table in this text: it is empty.'
export const tooManyLines = (most: number): string =>
  `The table has more than ${count(most)} lines. Import it in parts.`
export const tooWide = (fields: number, most: number): string =>
  `One line of this table has ${count(fields)} fields; at most ${count(most)} are read. ${SEPARATOR}`
export const fieldTooLong = (line: number, heading: string, length: number, most: number): string =>
  `In line ${line}${heading === '' ? '' : `, under “${heading}”`}, one field has ${count(length)} characters; at most ${count(most)} fit. ${SEPARATOR}`
export const tooManyRows = (rows: number, most: number): string =>
  `There would be ${count(rows)} rows; a table has at most ${count(most)}. Import it in parts, each into another table.`
export const tooManyColumns = (columns: number, most: number): string =>
  `There would be ${count(columns)} columns; a table has at most ${count(most)}. Leave some of them out.`
export const tooLargeForSheet = 'This table is too large for a worksheet. Leave columns out, or import it in parts.'

export const dateOnly = 'This column takes a date without a time.'
export const timeOfDay = 'A time of day is written hours:minutes, such as 14:30.'
