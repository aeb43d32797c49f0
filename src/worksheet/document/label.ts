import type { Cell, NamedCell, Note } from '../schema/document.ts'
import * as words from './words.ts'

/** What a person calls something that has a name: its label, or the name itself. */
export const labelOf = ({ label, name }: { readonly label?: string | undefined; readonly name: string }): string =>
  label?.trim() || name

/** What a person calls a cell that has a title, not a name. */
export const titleOf = (cell: Exclude<Cell, NamedCell | Note>): string =>
  cell.kind === 'function' ? labelOf(cell) : cell.title?.trim() || words.UNTITLED[cell.kind]
