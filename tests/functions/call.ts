import { LIBRARY } from '../../src/functions/index.ts'
import { checkFormula, computable, computeOnce, emptyScope, type Value } from '../../src/language/index.ts'

/** Computes a formula that names no cells. */
export function formula(text: string): Value {
  const checked = checkFormula(text, emptyScope(LIBRARY))
  if (!checked.root) throw new Error(checked.diagnostics.map(({ message }) => message).join(' '))
  return computeOnce(computable(checked.root, checked.mayBeInfinite), () => 0).value
}

/** Calls a function's bare arithmetic on SI numbers; defaults are put in for the arguments left out at the end. */
export function call<Result = number>(name: string, ...given: readonly unknown[]): Result {
  const record = LIBRARY.get(name)
  if (!record) throw new Error(`There is no function ${name}.`)
  const defaults = record.parameters.slice(given.length).map(({ default: text }) => {
    if (text === undefined) throw new Error(`${name} wants more arguments.`)
    return text === 'infinity' ? Number.POSITIVE_INFINITY : formula(text)
  })
  return (record.compute as (...args: unknown[]) => unknown)(...given, ...defaults) as Result
}

/** What a function advises for these arguments. */
export const advice = (name: string, ...args: readonly unknown[]): string | undefined =>
  (LIBRARY.get(name)?.advise as ((...args: unknown[]) => string | undefined) | undefined)?.(...args)

export const MM = 1e-3
export const UM = 1e-6
export const NM = 1e-9
