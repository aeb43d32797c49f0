import type { Cell, NamedCell, Note } from '../schema/document.ts'

/** What a person calls something that has a name: its label, or the name itself. */
export const labelOf = ({ label, name }: { readonly label?: string | undefined; readonly name: string }): string =>
  label?.trim() || name

const UNTITLED = { drawing: 'Drawing', steps: 'Steps', range: 'Range', variants: 'Variants', run: 'The run' } as const

/** What a person calls a cell that has a title, not a name. */
export const titleOf = (cell: Exclude<Cell, NamedCell | Note>): string =>
  cell.kind === 'function' ? labelOf(cell) : cell.title?.trim() || UNTITLED[cell.kind]

/** Stands in the place of a cell of a kind that this version reserves and a later one fills. */
export const LATER_KIND_TEXT =
  'This cell was made by a later version. It stays in the worksheet, but is not shown here.'
