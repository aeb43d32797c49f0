import { isExample } from '../../worksheet/analysis/provenance.ts'
import type { Cell, Given, Sheet, TableCell } from '../../worksheet/index.ts'

/** A given that still has the example's figure, or a table that still has its rows. */
export type Example = Given | TableCell

/** Whether a cell still has the example's figure, or its rows. */
export const isOfExample = (cell: Cell | undefined): cell is Example =>
  (cell?.kind === 'given' || cell?.kind === 'table') && isExample(cell)

/** What still is the example's, in the order of the sheet. */
export const examplesOf = ({ cells }: Pick<Sheet, 'cells'>): readonly Example[] => cells.filter(isOfExample)

/** How many figures and how many tables they are, as sentences take them. */
export function countExamples(examples: readonly Example[]): readonly [figures: number, tables: number] {
  const tables = examples.filter(({ kind }) => kind === 'table').length
  return [examples.length - tables, tables]
}

/** The first of some examples after a cell, or else the first of all. */
export function nextOf({ cells }: Sheet, examples: readonly Example[], after: string): Example | undefined {
  const place = (id: string): number => cells.findIndex((cell) => cell.id === id)
  return examples.find(({ id }) => place(id) > place(after)) ?? examples[0]
}
