import type { Cell, NamedCell, Note } from '../schema/document.ts'

/** What a person calls something that has a name: its label, or the name itself. */
export const labelOf = ({ label, name }: { readonly label?: string | undefined; readonly name: string }): string =>
  label?.trim() || name

const UNTITLED = { drawing: 'Drawing', steps: 'Steps', range: 'Range', variants: 'Variants', run: 'The run' } as const

/** What a person calls a cell that has a title, not a name. */
export const titleOf = (cell: Exclude<Cell, NamedCell | Note>): string =>
  cell.kind === 'function' ? labelOf(cell) : cell.title?.trim() || UNTITLED[cell.kind]
