import { RESERVED } from '../../language/index.ts'
import { NAME_PATTERN } from '../format/format.ts'
import { kindOf } from '../kinds/index.ts'
import type { Cell, NamedCell, Note } from '../schema/document.ts'
import * as words from './words.ts'

/** Whether a cell declares a name that formulas can use: exactly the kinds that get a value do. */
export const isNamed = (cell: Cell): cell is NamedCell => kindOf(cell).computed !== undefined

export type Heading = Note & { readonly role: 'heading' }

/** Whether a cell is the heading that a section begins with. */
export const isHeading = (cell: Cell | undefined): cell is Heading => cell?.kind === 'note' && cell.role === 'heading'

/** Why a cell cannot have a name, or undefined where it can. */
export function refusedName(name: string, cells: readonly Cell[], except?: string): string | undefined {
  if (name === '') return words.cellNeedsName
  if (!NAME_PATTERN.test(name)) return words.notAName(name)
  if (RESERVED.has(name)) return words.reservedName(name)
  const other = cells.find((cell) => isNamed(cell) && cell.name === name && cell.id !== except)
  return other ? words.nameTaken(name) : undefined
}

/** A free name made from another: `width`, `width_2`, `width_3`, … */
export const freeName = (preferred: string, cells: readonly Cell[]): string =>
  freeNameBeside(preferred, new Set(cells.filter(isNamed).map(({ name }) => name)))

/** The same beside names known to be taken. */
export function freeNameBeside(preferred: string, taken: ReadonlySet<string>): string {
  const base = NAME_PATTERN.test(preferred) && !RESERVED.has(preferred) ? preferred : 'cell'
  if (!taken.has(base)) return base
  const stem = base.replace(/_\d+$/, '').slice(0, 58)
  for (let n = 2; ; n++) if (!taken.has(`${stem}_${n}`)) return `${stem}_${n}`
}
