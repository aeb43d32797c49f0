export { signature } from './checking/arguments.ts'
export { defaultText, parameterText, rangeText, resultText } from './checking/record-text.ts'
export { computable } from './compiling/computable.ts'
export { FULL_COMPILER } from './compiling/full-compiler.ts'
export { type Program, readAnyway } from './evaluating/closures.ts'
export {
  type Computable,
  type Computed,
  cautionsOf,
  computeOnce,
  explainFailure,
  refusedValue,
} from './evaluating/compiled-formula.ts'
export type {
  CompiledFormula,
  CompileResult,
  Condition,
  FormulaCompiler,
  ParsedForCompiling,
} from './evaluating/formula-compiler.ts'
export { checkFormula } from './fixing/check-formula.ts'
export { namesIn, renameAllIn, renameIn, renamePartIn } from './syntax/names-in.ts'
export { applyFix, type Diagnostic, problem, warning } from './values/diagnostic.ts'
export { fitsDeclared } from './values/fits-declared.ts'
export * from './values/function-record.ts'
export { advised } from './values/guards.ts'
export { ComputeError, MISSING, NotYet } from './values/operations.ts'
export { withGaps } from './values/row-gaps.ts'
export { emptyScope, RESERVED, type Scope } from './values/scope.ts'
export * from './values/types.ts'
