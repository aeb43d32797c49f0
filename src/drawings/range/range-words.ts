import type { RangeTable } from '../../worksheet/analysis/range-table.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { capital, series } from '../canvas/text-figures.ts'
import type { Table } from '../canvas/tree.ts'

/** The range in sentences: from where to where, and what each result does on the way. */
export function describeRange({ given, shown, followed, presentAt, present }: RangeTable): string {
  const from = shown[0] as string
  const to = shown.at(-1) as string
  const now =
    presentAt !== undefined
      ? ` It stands at ${shown[presentAt]} now.`
      : present !== undefined
        ? ' Its present value is not one of them.'
        : ''
  const goes = followed.map(({ cell, shown: figures }) => `${labelOf(cell)} from ${figures[0]} to ${figures.at(-1)}`)
  return `${capital(labelOf(given))} from ${from} to ${to}, at ${shown.length} ${shown.length === 1 ? 'value' : 'values'}: ${series(goes)}.${now}`
}

/** The same in rows and columns. */
export const rangeTableOf = ({ given, shown, followed, presentAt }: RangeTable): Table => ({
  head: [labelOf(given), ...followed.map(({ cell }) => labelOf(cell))],
  rows: shown.map((text, at) => [
    at === presentAt ? `${text} (now)` : text,
    ...followed.map(({ shown: figures }) => figures[at] as string),
  ]),
})
