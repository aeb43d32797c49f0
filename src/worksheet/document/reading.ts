import type { Cell, Frame, Given, NamedCell, Result } from '../schema/document.ts'
import { rowsMark } from './rows-mark.ts'

/** A cell that holds what was read: a result that was measured, a reading typed in, or a picture that was measured. */
export type ReadingCell = Result | Given | Frame

/** Whether something was measured in the place of what a result computes. */
export const isMeasured = (cell: Cell): cell is Result => cell.kind === 'result' && (cell.measured ?? '').trim() !== ''

/** What was read, as it is compared later; undefined where nothing was, or where the cell holds no reading. */
export function readIn(cell: Cell): string | undefined {
  if (cell.kind === 'result') return isMeasured(cell) ? cell.measured : undefined
  if ((cell.kind !== 'given' && cell.kind !== 'frame') || !cell.read_under) return undefined
  return cell.kind === 'frame' ? cell.picture?.digest : cell.value.trim() === '' ? undefined : cell.value
}

/** What a cell was read under, for as long as it holds the same reading. */
export function readUnder(cell: Cell): ReadingCell['measured_under'] {
  const { measured_under: under } = cell as Partial<ReadingCell>
  return under && under.text === readIn(cell) ? under : undefined
}

/** What is filled in, as it is compared later; undefined for what is computed. */
export function filledIn(cell: NamedCell): string | undefined {
  if (cell.kind === 'given') return cell.value
  if (cell.kind === 'table') return rowsMark(cell.rows)
  return isMeasured(cell) ? cell.measured : undefined
}

/** A reading confirmed as it is: what it was read under is forgotten, so that it is found anew. */
export function confirmed<C extends ReadingCell>(cell: C): C {
  const { measured_under: _, ...rest } = cell
  return rest as C
}
