import type { ChosenPiece } from '../document/kit-given.ts'
import type { KitSort } from '../format/kit-sorts.ts'
import type { Cell, Given } from '../schema/document.ts'

/** A piece there is, of its sort. */
export interface KitPiece extends ChosenPiece {
  readonly sort: KitSort
}

/** The givens that take a figure of a piece when one is chosen: without another piece they cannot be had otherwise. */
export function filledByKit(cells: readonly Cell[]): ReadonlySet<string> {
  return new Set(
    cells.flatMap((cell) => (isKit(cell) && cell.value.trim() !== '' ? Object.values(cell.fills ?? {}) : [])),
  )
}

const isKit = (cell: Cell): cell is Given => cell.kind === 'given' && cell.entry === 'kit'
