import type { Worksheet } from '../../worksheet/schema/document.ts'
import type { Summary } from './types.ts'

let last = 0

/** The time now, never the same twice and never before `earlier`: two saves in one millisecond keep their order. */
function now(earlier = 0): number {
  last = Math.max(Date.now(), last + 0.001, earlier + 0.001)
  return last
}

/** A sheet's line in the list after a save; `before` is the line it had. */
export const summarise = (id: string, worksheet: Worksheet, before?: Summary): Summary => ({
  id,
  title: worksheet.title,
  changed: now(before?.changed),
  cells: worksheet.cells.length,
  changes: changesOf(before) + 1,
})

/** How often a sheet was saved. Sheets kept by the first version of the store did not count. */
export const changesOf = (summary: Summary | undefined): number => summary?.changes ?? 0

const time = (summary: Summary): number => summary.removed ?? summary.changed

export const newestFirst = (summaries: readonly Summary[]): readonly Summary[] =>
  [...summaries].sort((a, b) => time(b) - time(a))
