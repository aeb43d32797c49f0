import type { Callable, Diagnostic, FormulaCompiler, Library } from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import { kindOf } from '../kinds/index.ts'
import type { FunctionCell } from '../schema/document.ts'
import type { Node } from './node.ts'

/** A function of the sheet, as formulas call it. */
export interface OwnFunction {
  readonly cell: FunctionCell
  /** Undefined while something is wrong with it, or its formula is empty. */
  readonly callable?: Callable
  readonly unit?: DisplayUnit
  /** What is wrong with its formula, or with its name, arguments or unit. */
  readonly diagnostics: readonly Diagnostic[]
}

/** Defines a function by its cell, beside those that are known. */
export type DefineFunction = (cell: FunctionCell, known: Library, compiler: FormulaCompiler) => OwnFunction

/** Reading a call that no template has makes the compiler load what defines functions, even one that nothing calls. */
const undefinedYet: DefineFunction = (cell, _, compiler) => {
  compiler.read(`${cell.name}()`)
  return { cell, diagnostics: [] }
}

/**
 * Defines functions in order: each may call those before it, so that none can call itself. Until what defines them is
 * loaded, none can be called.
 */
export function defineFunctions(
  functions: readonly Pick<OwnFunction, 'cell'>[],
  base: Library,
  compiler: FormulaCompiler,
  define: DefineFunction = undefinedYet,
): readonly OwnFunction[] {
  const known = new Map(base)
  return functions.map(({ cell }) => {
    const defined = define(cell, known, compiler)
    if (defined.callable) known.set(cell.name, defined.callable)
    return defined
  })
}

/** A library with a sheet's own functions. */
export function libraryWith(base: Library, own: readonly OwnFunction[]): Library {
  if (own.length === 0) return base
  return new Map([...base, ...own.flatMap(({ cell, callable }) => (callable ? [[cell.name, callable] as const] : []))])
}

/** Whether a cell's formulas may call a function of this name. */
export function mentionsFunction({ cell }: Node, name: string): boolean {
  return (kindOf(cell).formulas?.(cell) ?? []).some((formula) => formula.includes(name))
}
