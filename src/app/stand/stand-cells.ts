import { type Cell, type Check, type CheckOutcome, isHeading, type Result, type Sheet } from '../../worksheet/index.ts'

/** The checks marked for the stand. */
export const standChecks = (cells: readonly Cell[]): Check[] =>
  cells.filter((cell): cell is Check => cell.kind === 'check' && cell.stand === true)

/** The checks of a sheet that are in a state. */
export const checksIn = (sheet: Sheet, state: CheckOutcome['state']): readonly Check[] =>
  sheet.cells.filter((cell): cell is Check => cell.kind === 'check' && sheet.checkState(cell.id) === state)

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
