import { applyFix, type Diagnostic, typeName, type Value } from '../language/index.ts'
import type { Outcome } from '../worksheet/index.ts'

export interface CellReport {
  /** In coherent SI; null where there is none, or where it is infinite, which JSON cannot write. */
  readonly value: Value | null
  readonly dimension: string | null
  readonly shown: string | null
  readonly error: ReportedError | null
  /** Why a figure is doubtful. */
  readonly warnings: readonly string[]
  /** Whole formulas that would leave no doubt. */
  readonly fixes: readonly string[]
}

export interface ReportedError {
  readonly message: string
  /** The span in the formula, in UTF-16 units. */
  readonly from: number
  readonly to: number
  /** Whole formulas without the error. */
  readonly fixes: readonly string[]
}

const NOTHING = { value: null, dimension: null, shown: null, warnings: [], fixes: [] }

/** What became of a cell, as data; `text` is its formula, or what was typed, to which the fixes are applied. */
export function reportOf(outcome: Outcome, text: string): CellReport {
  if (outcome.state === 'value')
    return {
      value: finiteOrNull(outcome.value),
      dimension: typeName(outcome.type),
      shown: outcome.shown.text,
      error: null,
      warnings: outcome.warnings.map(({ message }) => message),
      fixes: wholeFixes(text, outcome.warnings),
    }
  return { ...NOTHING, error: outcome.state === 'error' ? errorOf(outcome.diagnostics, text) : null }
}

function errorOf(diagnostics: readonly Diagnostic[], text: string): ReportedError | null {
  const first = diagnostics.find(({ severity }) => severity === 'error') ?? diagnostics[0]
  return first ? { message: first.message, from: first.from, to: first.to, fixes: wholeFixes(text, [first]) } : null
}

/** The whole formulas that the fixes of some diagnostics make, each once. */
export const wholeFixes = (text: string, diagnostics: readonly Diagnostic[]): string[] => [
  ...new Set(diagnostics.flatMap(({ fixes }) => fixes.map((fix) => applyFix(text, fix)))),
]

function finiteOrNull(value: Value): Value | null {
  return typeof value === 'number' && !Number.isFinite(value) ? null : value
}

/** A file's text may contain control characters of a terminal; they are not sent to it. */
const withoutControls = (text: string): string => text.replace(/\p{Cc}/gu, ' ')

/** A text on one line, without control characters. */
export const onOneLine = (text: string): string => withoutControls(text.replace(/\s*\n\s*/g, ' '))

/** Prints data as JSON on the standard output. */
export const printJson = (data: unknown): void => {
  process.stdout.write(`${JSON.stringify(data)}\n`)
}

/** Prints lines on the error stream. */
export const printErrorLines = (lines: readonly string[]): void => {
  if (lines.length > 0) process.stderr.write(`${lines.map(withoutControls).join('\n')}\n`)
}

/** Prints lines on the standard output. */
export const printLines = (lines: readonly string[]): void => {
  if (lines.length > 0) process.stdout.write(`${lines.map(withoutControls).join('\n')}\n`)
}
