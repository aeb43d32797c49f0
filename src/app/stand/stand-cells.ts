import type { Cell, Check, Given, Note, Result, Steps } from '../../worksheet/index.ts'

/** The cells shown at the stand, each kind in the order of the sheet. */
export interface StandCells {
  readonly results: readonly Result[]
  readonly givens: readonly Given[]
  readonly checks: readonly Check[]
  readonly steps: readonly Steps[]
}

const isMarked = (cell: Cell): boolean => 'stand' in cell && cell.stand === true

/** The cells marked as set at the stand, and every list of steps. */
export const standCells = (cells: readonly Cell[]): StandCells => ({
  results: cells.filter((cell): cell is Result => cell.kind === 'result' && isMarked(cell)),
  givens: cells.filter((cell): cell is Given => cell.kind === 'given' && isMarked(cell)),
  checks: cells.filter((cell): cell is Check => cell.kind === 'check' && isMarked(cell)),
  steps: cells.filter((cell): cell is Steps => cell.kind === 'steps'),
})

export interface SectionResults {
  /** The text of the heading; empty before the first heading. */
  readonly title: string
  readonly results: readonly Result[]
}

/** The results of each section that has any, where nothing is marked. */
export function resultsBySection(cells: readonly Cell[]): SectionResults[] {
  const sections: { title: string; results: Result[] }[] = [{ title: '', results: [] }]
  for (const cell of cells) {
    if (isHeading(cell)) sections.push({ title: cell.text, results: [] })
    if (cell.kind === 'result' && cell.more_exact !== true) sections.at(-1)?.results.push(cell)
  }
  return sections.filter(({ results }) => results.length > 0)
}

const isHeading = (cell: Cell): cell is Note => cell.kind === 'note' && cell.role === 'heading'

/** The section of each cell whose label occurs more than once, by the cell’s id. */
export function whereRepeated(cells: readonly Cell[], shown: readonly (Result | Given)[]): ReadonlyMap<string, string> {
  const label = (cell: Result | Given): string => cell.label?.trim() || cell.name
  const counts = new Map<string, number>()
  for (const cell of shown) counts.set(label(cell), (counts.get(label(cell)) ?? 0) + 1)
  const repeated = new Set(shown.filter((cell) => (counts.get(label(cell)) ?? 0) > 1).map(({ id }) => id))
  const places = new Map<string, string>()
  let heading = ''
  for (const cell of cells) {
    if (isHeading(cell)) heading = cell.text
    if (repeated.has(cell.id) && heading !== '') places.set(cell.id, heading)
  }
  return places
}
