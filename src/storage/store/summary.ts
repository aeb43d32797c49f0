import type { Worksheet } from '../../worksheet/schema/document.ts'
import type { CheckCounts, Summary } from './types.ts'

let last = 0

/** The longest run of saves that may share a millisecond before the clock is believed again. */
const BURST_MS = 1000

/**
 * The time now in milliseconds since 1970, never the same twice: saves in one millisecond stay in order. A clock
 * that was ahead and is set back is followed at once.
 */
export function now(): number {
  const clock = Date.now()
  last = clock <= last && last - clock < BURST_MS ? last + 0.001 : clock
  return last
}

/** What a sheet's line in the list says of the sheet itself. */
export function lineOf(worksheet: Worksheet): Pick<Summary, 'title' | 'job' | 'of' | 'cells'> {
  const job = worksheet.job?.trim()
  const of = sizeIn(worksheet)
  return { title: worksheet.title, ...(job ? { job } : {}), ...(of ? { of } : {}), cells: worksheet.cells.length }
}

/** A sheet's line in the list after a save; `before` is the line it had. */
export function summarise(
  id: string,
  worksheet: Worksheet,
  stamp: string,
  { before, checks }: { readonly before?: Summary | undefined; readonly checks?: CheckCounts | undefined } = {},
): Summary {
  return {
    id,
    ...lineOf(worksheet),
    ...(checks ? { checks } : {}),
    ...(before?.archived === undefined ? {} : { archived: before.archived }),
    changed: now(),
    changes: changesOf(before) + 1,
    stamp,
  }
}

/** The size of the original, with the unit of its field where none was typed; an example is none. */
function sizeIn({ cells }: Worksheet): string | undefined {
  const cell = cells.find((one) => one.kind === 'given' && one.name === 'original')
  if (cell?.kind !== 'given' || (cell.from?.kind === 'example' && cell.from.text === cell.value)) return undefined
  const size = cell.value.trim()
  return size === '' || /[a-z″′"]\s*$/i.test(size) ? size : `${size} ${cell.unit ?? ''}`.trim()
}

/** Puts a summary into the archive, or takes it out. */
export const asArchived = ({ archived: _, ...summary }: Summary, archived: boolean): Summary =>
  archived ? { ...summary, archived: Date.now() } : summary

/** A summary that says how the checks stand, where it did not. */
export const withChecks = (summary: Summary, checks: CheckCounts): Summary =>
  summary.checks ? summary : { ...summary, checks }

/** How many times a sheet was saved. Sheets saved by the first version of the store did not count. */
const changesOf = (summary: Summary | undefined): number => summary?.changes ?? 0

/** Names one state of one sheet. Unlike a count or a time it is never the same for two states. */
export const stateOf = ({ stamp, changes = 0, changed }: Summary): string => stamp ?? `${changes}@${changed}`

const time = (summary: Summary): number => summary.removed ?? summary.changed

/** Sheets in the order of the shelf, the last changed first. */
export const newestFirst = (summaries: readonly Summary[]): readonly Summary[] =>
  [...summaries].sort((a, b) => time(b) - time(a))
