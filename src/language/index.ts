export { signature } from './arguments.ts'
export { type Checked, checkFormula, type Limits } from './check.ts'
export type { Program } from './compile.ts'
export { applyMend, type Diagnostic, type Mend } from './diagnostic.ts'
export { fitsDeclared } from './fits-declared.ts'
export {
  type Computable,
  type Computed,
  computable,
  computeOnce,
  explainFailure,
  refusedValue,
  standingCautions,
} from './formula.ts'
export * from './function-record.ts'
export { advised, describeRange } from './guarded.ts'
export { doubt, LONGEST_FORMULA, problem } from './lookalikes.ts'
export type { Input } from './lower.ts'
export { namesIn, renameAllIn, renameIn, renamePartIn } from './names-in.ts'
export { ComputeError } from './operations.ts'
export { type ParsedFormula, parseFormula } from './parsed.ts'
export { parameterInWords, rangeInWords, resultInWords } from './record-text.ts'
export { CONSTANTS, emptyScope, RESERVED, type Scope } from './scope.ts'
export type { Typed } from './typed.ts'
export * from './types.ts'
