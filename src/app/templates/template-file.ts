import type { SubjectFile } from '../../functions/index.ts'
import type { PrecompiledFormulas } from '../../language/evaluating/precompiled.ts'
import type { Cell, Worksheet } from '../../worksheet/index.ts'

/** A template with its precompiled formulas, which compute without the parser and the checker. */
export interface TemplateFile {
  readonly worksheet: Worksheet
  readonly prepared: PrecompiledFormulas
  /** The files of functions its formulas call. */
  readonly functions: readonly SubjectFile[]
}

/** The marks of the formulas of each template, separated by spaces. */
export type FormulaIndex = Readonly<Record<string, string>>

/** The formulas of results, checks, table columns, drawings and runs. */
export const formulasOf = (cells: readonly Cell[]): string[] =>
  cells.flatMap((cell) => {
    if (cell.kind === 'result') return [cell.formula]
    if (cell.kind === 'check') return [cell.condition]
    if (cell.kind === 'table') return cell.columns.flatMap(({ formula }) => formula ?? [])
    return cell.kind === 'drawing' || cell.kind === 'run' ? Object.values(cell.from) : []
  })
