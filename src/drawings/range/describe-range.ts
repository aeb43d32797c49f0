import { listText } from '../../units/plural.ts'
import type { RangeTable } from '../../worksheet/analysis/followed.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { capital } from '../canvas/text-figures.ts'
import type { Table } from '../canvas/tree.ts'
import { RANGE_WORDS as WORDS } from './words.ts'

/** The description of the range: its ends, and the first and last value of each result. */
export function describeRange({ varied, shown, followed, presentAt, present }: RangeTable): string {
  const results = followed.map(({ cell, shown: figures }) =>
    WORDS.followed(labelOf(cell), figures[0] as string, figures.at(-1) as string),
  )
  const [from, to] = [shown[0] as string, shown.at(-1) as string]
  return [
    WORDS.description(capital(labelOf(varied)), from, to, shown.length, listText(results)),
    ...(presentAt !== undefined
      ? [WORDS.present(shown[presentAt] as string)]
      : present !== undefined
        ? [WORDS.presentNotShown]
        : []),
  ].join(' ')
}

/** The values of the range as a table. */
export const rangeTableOf = ({ varied, shown, followed, presentAt }: RangeTable): Table => ({
  head: [labelOf(varied), ...followed.map(({ cell }) => labelOf(cell))],
  rows: shown.map((text, at) => [
    at === presentAt ? WORDS.isNow(text) : text,
    ...followed.map(({ shown: figures }) => figures[at] as string),
  ]),
})
