import { type Diagnostic, typeName, type Value } from '../language/index.ts'
import type { Outcome } from '../worksheet/index.ts'

export interface CellReport {
  /** In coherent SI; null where there is none, or where it is infinite, which JSON cannot write. */
  readonly value: Value | null
  readonly dimension: string | null
  readonly shown: string | null
  readonly error: { readonly message: string; readonly from: number; readonly to: number } | null
}

const NOTHING = { value: null, dimension: null, shown: null }

export function reportOf(outcome: Outcome): CellReport {
  if (outcome.state === 'value')
    return {
      value: finiteOrNull(outcome.value),
      dimension: typeName(outcome.type),
      shown: outcome.shown.text,
      error: null,
    }
  return { ...NOTHING, error: outcome.state === 'error' ? errorOf(outcome.diagnostics) : null }
}

function errorOf(diagnostics: readonly Diagnostic[]): CellReport['error'] {
  const first = diagnostics.find(({ severity }) => severity === 'error') ?? diagnostics[0]
  return first ? { message: first.message, from: first.from, to: first.to } : null
}

function finiteOrNull(value: Value): Value | null {
  return typeof value === 'number' && !Number.isFinite(value) ? null : value
}

/** A file's text may hold signs that steer a terminal; they are not sent to it. */
const withoutControls = (text: string): string => text.replace(/\p{Cc}/gu, ' ')

export const onOneLine = (text: string): string => withoutControls(text.replace(/\s*\n\s*/g, ' '))

export const printJson = (data: unknown): void => {
  process.stdout.write(`${JSON.stringify(data)}\n`)
}

export const printLines = (lines: readonly string[]): void => {
  if (lines.length > 0) process.stdout.write(`${lines.map(withoutControls).join('\n')}\n`)
}
