import { KIND_TITLES } from '../format/words.ts'
import type { Cell, NamedCell, Note } from '../schema/document.ts'

/** What a person calls something that has a name: its label, or the name itself. */
export const labelOf = ({ label, name }: { readonly label?: string | undefined; readonly name: string }): string =>
  label?.trim() || name

/** What a person calls a cell that has a title, not a name. */
export const titleOf = (cell: Exclude<Cell, NamedCell | Note>): string =>
  cell.kind === 'function' ? labelOf(cell) : cell.title?.trim() || KIND_TITLES[cell.kind]
