import { type ChosenPiece, choosePiece } from '../document/kit-given.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Cell, Given } from '../schema/document.ts'
import type { KitSort } from '../schema/kit-sorts.ts'

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

/** The pieces that would do in the place of those chosen, each tried in a copy of the sheet. */
export function piecesThatPass(
  sheet: Sheet,
  /** The cells that the requirement depends on. */
  behind: readonly Cell[],
  pieces: readonly KitPiece[],
  isMet: (trial: Sheet) => boolean,
): { readonly given: Given; readonly piece: KitPiece; readonly trial: Sheet }[] {
  const names = new Set(behind.map((cell) => ('name' in cell ? cell.name : '')))
  const kit = sheet.cells.filter(isKit).filter((given) => {
    return !given.fixed && [given.name, ...Object.values(given.fills ?? {})].some((name) => names.has(name))
  })
  return kit.flatMap((given) => {
    const others = pieces.filter(({ sort, name }) => sort === given.sort && name !== given.value)
    return others.flatMap((piece) => {
      const cells = sheet.cells.filter((cell) => cell === given || behind.includes(cell))
      const trial = sheet.trial(cells)
      trial.apply(choosePiece(cells, given, piece))
      return isMet(trial) ? [{ given, piece, trial }] : []
    })
  })
}
