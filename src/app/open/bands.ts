import type { Cell, Check, Given, Note, Result } from '../../worksheet/index.ts'
import type { Section } from './sections.ts'

/** The cells of a section by their place in its band, each in the order of the sheet. */
export interface Band {
  readonly givens: readonly Given[]
  readonly fineGivens: readonly Given[]
  readonly notes: readonly Note[]
  readonly results: readonly Result[]
  readonly fineResults: readonly Result[]
  readonly checks: readonly Check[]
  /** Cells that take the whole width below: steps, tables, ranges, variants, runs. */
  readonly wide: readonly Cell[]
}

const PLACED: ReadonlySet<Cell['kind']> = new Set(['given', 'result', 'check', 'note', 'drawing'])

const isGiven = (cell: Cell): cell is Given => cell.kind === 'given'
const isResult = (cell: Cell): cell is Result => cell.kind === 'result'

export const bandOf = ({ rows, exact }: Section): Band => ({
  givens: rows.filter(isGiven),
  fineGivens: exact.filter(isGiven),
  notes: rows.filter((cell): cell is Note => cell.kind === 'note'),
  results: rows.filter(isResult),
  fineResults: exact.filter(isResult),
  checks: rows.filter((cell): cell is Check => cell.kind === 'check'),
  wide: rows.filter(({ kind }) => !PLACED.has(kind)),
})
