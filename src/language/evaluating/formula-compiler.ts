import type { Diagnostic } from '../values/diagnostic.ts'
import type { Callable } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import type { Computable } from './compiled-formula.ts'

/** Limits of error written with ±: their own formula, absolute, or relative to the value. */
export interface LimitsOf<Ready = Computable> {
  readonly of: Ready
  readonly relative: boolean
}

/** A condition taken apart into the comparisons it is made of. */
export type Condition<Ready = Computable> =
  | { readonly both: boolean; readonly left: Condition<Ready>; readonly right: Condition<Ready> }
  | Comparison<Ready>

/** What is so or not; where it compares the order of two quantities, these too. */
export interface Comparison<Ready = Computable> {
  readonly whole: Ready
  /** Whether it is required to be true; false after `not`. */
  readonly so: boolean
  readonly order?: { readonly left: Ready; readonly right: Ready; readonly upward: 1 | -1 }
}

/** All that computing and showing need of a formula whose units are checked: neither its text nor its tree. */
export interface CompiledFormula {
  readonly computable: Computable
  readonly warnings: readonly Diagnostic[]
  /** The functions it calls. */
  readonly calls: readonly Callable[]
  readonly limits?: LimitsOf
  /** Of a formula that is so or not. */
  readonly condition: () => Condition
}

/** What became of a formula in its scope. */
export interface CompileResult {
  /** Undefined where something is wrong, here or in a cell it names. */
  readonly meaning?: CompiledFormula
  readonly errors: readonly Diagnostic[]
  /** The cells it names, in order of use, whether or not they exist. */
  readonly uses: readonly string[]
}

/** A formula read once, for its names and for any number of checks in different scopes. */
export interface ParsedForCompiling {
  /** The words in it that may be cells, whether or not there are such cells. */
  readonly mentions: readonly string[]
  /** Undefined where the checker is needed and not here yet. */
  check(scope: Scope): CompileResult | undefined
}

/** Compiles formulas: the checker itself, or what the build has prepared with it. */
export interface FormulaCompiler {
  read(formula: string): ParsedForCompiling
}
