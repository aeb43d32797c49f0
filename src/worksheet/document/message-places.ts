import type { FormulaCompiler } from '../../language/index.ts'
import { type KindTable, kindOf } from '../kinds/index.ts'
import type { Cell } from '../schema/document.ts'

/** Cells that compute the sheet with other givens: any change may reach them, even where the sheet's values stay the same. */
export const triesOthers = (cell: Cell, kinds?: KindTable): boolean => kindOf(cell, kinds).triesOthers === true

/** The formulas a cell shows besides its own. */
export const formulasShown = (cell: Cell, kinds?: KindTable): readonly string[] =>
  kindOf(cell, kinds).shown?.(cell) ?? []

/** The names whose figures a cell shows besides those its own condition uses: in its messages, drawn, or listed. */
export const namesShown = (cell: Cell, compiler: FormulaCompiler, kinds?: KindTable): ReadonlySet<string> =>
  new Set([
    ...formulasShown(cell, kinds).flatMap((formula) => compiler.read(formula).mentions),
    ...(kindOf(cell, kinds).listed?.(cell) ?? []),
  ])
