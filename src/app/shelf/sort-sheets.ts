import type { Summary } from '../../storage/store/types.ts'

/** How saved sheets may be sorted. */
export const ORDERS = ['saved', 'job', 'checks'] as const
export type Order = (typeof ORDERS)[number]

const nameOf = ({ job, title }: Summary): string => job ?? title

/** By job, with the numbers in it as numbers: Box 9 before Box 10. */
const byName = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })

const latest = (a: Summary, b: Summary): number => b.changed - a.changed

const COMPARE: Readonly<Record<Order, (a: Summary, b: Summary) => number>> = {
  saved: latest,
  job: (a, b) => byName.compare(nameOf(a), nameOf(b)) || byName.compare(a.title, b.title) || latest(a, b),
  checks: (a, b) =>
    (b.checks?.fail ?? 0) - (a.checks?.fail ?? 0) ||
    (b.checks?.waiting ?? 0) - (a.checks?.waiting ?? 0) ||
    latest(a, b),
}

/** The sheets in an order; checks: those that fail most first, then those that wait. */
export const sortedSheets = (sheets: readonly Summary[], order: Order): readonly Summary[] =>
  [...sheets].sort(COMPARE[order])
