export { signature } from './checking/arguments.ts'
export { type Checked, checkFormula, type Limits } from './checking/check.ts'
export { parameterInWords, rangeInWords, resultInWords } from './checking/record-text.ts'
export type { Typed } from './checking/typed-tree.ts'
export { computable } from './compiling/computable.ts'
export { WHOLE } from './compiling/full-compiler.ts'
export type { Input } from './compiling/lower.ts'
export type { Program } from './evaluating/closures.ts'
export {
  type Computable,
  type Computed,
  computeOnce,
  explainFailure,
  refusedValue,
  standingCautions,
} from './evaluating/compiled-formula.ts'
export type { Comparison, Condition, Meaning, Reader, ReadFormula, Understood } from './evaluating/formula-compiler.ts'
export { LONGEST_FORMULA } from './syntax/confusable-characters.ts'
export { namesIn, renameAllIn, renameIn, renamePartIn } from './syntax/names-in.ts'
export { type ParsedFormula, parseFormula } from './syntax/parsed-formula.ts'
export { applyMend, type Diagnostic, doubt, type Mend, problem } from './values/diagnostic.ts'
export { fitsDeclared } from './values/fits-declared.ts'
export * from './values/function-record.ts'
export { advised, describeRange } from './values/guards.ts'
export { ComputeError } from './values/operations.ts'
export { CONSTANTS, emptyScope, RESERVED, type Scope } from './values/scope.ts'
export * from './values/types.ts'
