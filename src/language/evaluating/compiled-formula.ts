import { type Diagnostic, problem } from '../values/diagnostic.ts'
import type { Callable } from '../values/function-record.ts'
import { advised } from '../values/guards.ts'
import { ComputeError, MISSING } from '../values/operations.ts'
import type { Type, Value } from '../values/types.ts'
import { VALUE_WORDS as W } from '../values/words.ts'
import type { Program } from './closures.ts'

/** Where an argument of a compiled formula comes from. */
export type Input = { readonly cell: string } | { readonly constant: Value }

/** A formula made ready to compute. */
export interface Computable {
  readonly type: Type
  readonly program: Program
  /** What to put in the program's argument places. */
  readonly inputs: readonly Input[]
  readonly spans: readonly { readonly from: number; readonly to: number }[]
  readonly mayBeInfinite: boolean
}

/** Why a computed value is refused, or undefined where it is not. */
export function refusedValue(value: Value, mayBeInfinite: boolean): string | undefined {
  if (typeof value === 'number') {
    if (Number.isNaN(value)) return W.resultNotANumber
    if (!Number.isFinite(value) && !mayBeInfinite) return W.resultTooLarge
    return undefined
  }
  if (typeof value !== 'object') return undefined
  for (const part of Array.isArray(value) ? value : Object.values(value)) {
    const refused = refusedValue(part, mayBeInfinite)
    if (refused) return refused
  }
  return undefined
}

/** Turns an error met while computing into a diagnostic at the operation it came from. */
export function explainFailure(error: unknown, text: string, spans: Computable['spans'] = []): Diagnostic {
  if (!(error instanceof ComputeError)) throw error
  const span = error.operation === undefined ? undefined : spans[error.operation]
  return problem(error.message, span?.from ?? 0, span?.to ?? text.length)
}

export interface Computed {
  readonly value: Value
  /** What the functions advise for these arguments. */
  readonly advice: readonly string[]
}

/** Computes once, outside a sheet; throws ComputeError, NotYet where a value is read that is not there. */
export function computeOnce(computable: Computable, cellValue: (cell: string) => Value | undefined): Computed {
  const values = computable.inputs.map((input) =>
    'cell' in input ? (cellValue(input.cell) ?? MISSING) : input.constant,
  )
  let value: Value = 0
  const advice = advised(() => {
    value = computable.program(
      values,
      values.map((_, i) => i),
    )
  })
  const refused = refusedValue(value, computable.mayBeInfinite)
  if (refused) throw new ComputeError(refused)
  return { value, advice }
}

/** The cautions of functions, and what in them may harm a person or an original. */
export const cautionsOf = (calls: readonly Callable[]): { cautions: string[]; safety: string[] } => ({
  cautions: [...new Set(calls.flatMap((record) => record.cautions ?? []))],
  safety: [...new Set(calls.flatMap((record) => record.safety ?? []))],
})
