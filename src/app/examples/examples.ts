import { originOf } from '../../cells/shared/given-origin.ts'
import type { Cell, Given, Sheet } from '../../worksheet/index.ts'

/** Whether a cell is a given that still has the example's figure. */
export const isExample = (cell: Cell | undefined): cell is Given =>
  cell?.kind === 'given' && cell.value.trim() !== '' && originOf(cell) === 'example'

/** The givens that still have the example's figures, in the order of the sheet. */
export const examplesOf = ({ cells }: Sheet): readonly Given[] => cells.filter(isExample)

/** The first of some givens after a cell, or else the first of all. */
export function nextOf({ cells }: Sheet, givens: readonly Given[], after: string): Given | undefined {
  const place = (id: string): number => cells.findIndex((cell) => cell.id === id)
  return givens.find(({ id }) => place(id) > place(after)) ?? givens[0]
}
