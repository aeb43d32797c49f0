import type { Worksheet } from '../worksheet/document.ts'
import type { Summary } from './store.ts'

let last = 0

/** The time now, never the same twice: two saves in one millisecond keep their order. */
function now(): number {
  last = Math.max(Date.now(), last + 0.001)
  return last
}

export const summarise = (id: string, worksheet: Worksheet): Summary => ({
  id,
  title: worksheet.title,
  changed: now(),
  cells: worksheet.cells.length,
})

const time = (summary: Summary): number => summary.removed ?? summary.changed

export const newestFirst = (summaries: readonly Summary[]): readonly Summary[] =>
  [...summaries].sort((a, b) => time(b) - time(a))
