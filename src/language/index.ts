export { signature } from './arguments.ts'
export { type Checked, checkFormula, type Limits } from './check.ts'
export type { Program } from './compile.ts'
export { computable } from './computable.ts'
export { applyMend, type Diagnostic, doubt, type Mend, problem } from './diagnostic.ts'
export { fitsDeclared } from './fits-declared.ts'
export {
  type Computable,
  type Computed,
  computeOnce,
  explainFailure,
  refusedValue,
  standingCautions,
} from './formula.ts'
export * from './function-record.ts'
export { advised, describeRange } from './guarded.ts'
export { LONGEST_FORMULA } from './lookalikes.ts'
export type { Input } from './lower.ts'
export type { Comparison, Condition, Meaning, Reader, ReadFormula, Understood } from './meaning.ts'
export { namesIn, renameAllIn, renameIn, renamePartIn } from './names-in.ts'
export { ComputeError } from './operations.ts'
export { type ParsedFormula, parseFormula } from './parsed.ts'
export { parameterInWords, rangeInWords, resultInWords } from './record-text.ts'
export { CONSTANTS, emptyScope, RESERVED, type Scope } from './scope.ts'
export type { Typed } from './typed.ts'
export * from './types.ts'
export { WHOLE } from './whole.ts'
