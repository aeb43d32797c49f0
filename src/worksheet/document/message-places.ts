import type { FormulaCompiler } from '../../language/index.ts'
import type { Cell } from '../schema/document.ts'

/** The `{formula}` places of a message. */
export const placesIn = (message: string): string[] =>
  [...message.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1] as string)

/** Cells that compute the sheet with other givens: any change may reach them, whatever stays the same in the sheet. */
export const triesOthers = ({ kind }: Cell): boolean => kind === 'range' || kind === 'variants'

/** The names whose figures a cell shows besides those its own condition uses: in its messages, or drawn. */
export function namesShown(cell: Cell, reader: FormulaCompiler): ReadonlySet<string> {
  return new Set([...formulasShown(cell).flatMap((formula) => reader.read(formula).mentions), ...namesListed(cell)])
}

/** The formulas a cell shows besides its own. */
export function formulasShown(cell: Cell): readonly string[] {
  if (cell.kind === 'check') return [cell.message, cell.passes ?? ''].flatMap(placesIn)
  if (cell.kind === 'table') return cell.columns.flatMap(({ foot = [] }) => foot.flatMap(({ where }) => where ?? []))
  return cell.kind === 'drawing' || cell.kind === 'run' ? Object.values(cell.from) : []
}

/** The names a cell lists, rather than uses in a formula. */
function namesListed(cell: Cell): readonly string[] {
  switch (cell.kind) {
    case 'steps':
      return cell.steps.flatMap(({ reading }) => reading ?? [])
    case 'range':
      return [...(cell.of === undefined ? [] : [cell.of]), ...cell.results]
    case 'variants':
      return [...cell.sets.flatMap(({ values }) => Object.keys(values)), ...cell.results]
    case 'run':
      return cell.of === undefined ? [] : [cell.of]
    default:
      return []
  }
}
