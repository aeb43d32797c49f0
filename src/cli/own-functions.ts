import { functionOutcomeOf } from '../worksheet/analysis/function-outcome.ts'
import type { Sheet } from '../worksheet/index.ts'
import * as words from './words.ts'

/** A function of the sheet: what is wrong with it, and whether its examples are right. */
interface FunctionReport {
  readonly signature: string
  readonly error: { readonly message: string; readonly from: number; readonly to: number } | null
  readonly examples: readonly {
    readonly formula: string
    readonly gives: string
    readonly shown: string
    readonly passes: boolean
    readonly message: string
  }[]
}

/** The functions of a sheet by name; if two have one name, the first. */
export function functionReports(sheet: Sheet): readonly (readonly [name: string, report: FunctionReport])[] {
  const reports = new Map<string, FunctionReport>()
  for (const cell of sheet.cells) {
    const outcome = cell.kind === 'function' ? functionOutcomeOf(sheet.engine, cell.id) : undefined
    if (!outcome || cell.kind !== 'function' || reports.has(cell.name)) continue
    const error = outcome.diagnostics.find(({ severity }) => severity === 'error')
    reports.set(cell.name, {
      signature: outcome.signature,
      error: error ? { message: error.message, from: error.from, to: error.to } : null,
      examples: outcome.examples,
    })
  }
  return [...reports]
}

/** A function in lines: how it is called, or what is wrong with it, and each example. */
export const functionLines = ([, { signature, error, examples }]: readonly [string, FunctionReport]): string[] => [
  error ? words.errorIn(signature, error.message) : signature,
  ...examples.map(({ formula, gives, shown, passes, message }) =>
    passes ? words.exampleRight(formula, gives) : words.exampleWrong(formula, gives, shown || (message ?? '')),
  ),
]
