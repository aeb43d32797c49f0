import {
  type Callable,
  type CompiledFormula,
  ComputeError,
  computeOnce,
  type Diagnostic,
  describeType,
  fitsDeclared,
  number,
  numberIn,
  problem,
  RESERVED,
  Refusal,
  type Scope,
  type Type,
  type Value,
} from '../../language/index.ts'
import { NONE } from '../../units/index.ts'
import { declaredUnit } from '../document/read-given.ts'
import type { DefineFunction } from '../engine/own-functions.ts'
import { NAME_PATTERN } from '../format/format.ts'
import type { FunctionCell } from '../schema/document.ts'
import { functionWords as W } from './words.ts'

const wrong = (message: string): readonly Diagnostic[] => [problem(message, 0, 0)]

/** Defines a function of a sheet, which may call those that are known. */
export const defineFunction: DefineFunction = (cell, known, compiler) => {
  const text = cell.formula ?? ''
  const { unit, error } = declaredUnit(cell.unit)
  const declared = unit ? { unit } : {}
  if (known.has(cell.name) || RESERVED.has(cell.name))
    return { cell, ...declared, diagnostics: wrong(W.functionNameTaken(cell.name)) }
  const types = new Map<string, Type>()
  for (const argument of cell.arguments ?? []) {
    const message = refusedArgument(argument.name, types)
    if (message !== undefined) return { cell, ...declared, diagnostics: wrong(message) }
    const read = declaredUnit(argument.unit)
    if (read.error) return { cell, ...declared, diagnostics: wrong(W.argumentUnit(argument.name, read.error.message)) }
    types.set(argument.name, read.unit ? numberIn(read.unit) : number(NONE))
  }
  if (error) return { cell, diagnostics: [error] }
  if (text.trim() === '') return { cell, ...declared, diagnostics: [] }
  const scope: Scope = {
    library: known,
    typeOf: (name) => types.get(name),
    names: () => types.keys(),
    ...(unit ? { declared: unit.dimension } : {}),
  }
  const found = compiler.read(text).check(scope)
  const meaning = found?.meaning
  if (!found || !meaning || found.errors.length > 0) return { cell, ...declared, diagnostics: found?.errors ?? [] }
  if (meaning.limits) return { cell, ...declared, diagnostics: wrong(W.noLimitsInFunction) }
  const misfit = unit && fitsDeclared(meaning.computable.type, text, unit, scope)
  if (misfit) return { cell, ...declared, diagnostics: [misfit] }
  return { cell, ...declared, callable: callableOf(cell, types, meaning), diagnostics: meaning.warnings }
}

/** The kind of quantity an argument takes, by its unit; undefined where there is no such argument. */
export function argumentType({ arguments: args = [] }: FunctionCell, name: string): Type | undefined {
  const argument = args.find((one) => one.name === name)
  if (!argument) return undefined
  const { unit } = declaredUnit(argument.unit)
  return unit ? numberIn(unit) : number(NONE)
}

function refusedArgument(name: string, others: ReadonlyMap<string, Type>): string | undefined {
  if (!NAME_PATTERN.test(name) || RESERVED.has(name)) return W.argumentName(name)
  return others.has(name) ? W.argumentTwice(name) : undefined
}

function callableOf(cell: FunctionCell, types: ReadonlyMap<string, Type>, meaning: CompiledFormula): Callable {
  const { computable, calls } = meaning
  const places = new Map([...types.keys()].map((name, at) => [name, at]))
  const compute = (...values: readonly Value[]): Value => {
    try {
      return computeOnce(computable, (name) => values[places.get(name) as number] as Value).value
    } catch (error) {
      // Where in the function's own formula it happened says nothing about the formula that calls it.
      if (error instanceof ComputeError) throw new Refusal(W.inFunction(cell.name, error.message))
      throw error
    }
  }
  const cautions = calls.flatMap((record) => record.cautions ?? [])
  const safety = calls.flatMap((record) => record.safety ?? [])
  return {
    name: cell.name,
    parameters: (cell.arguments ?? []).map(({ name, about }) => {
      const type = types.get(name) as Type
      return { name, type, about: about?.trim() || describeType(type) }
    }),
    result: computable.type,
    ...(cautions.length > 0 ? { cautions } : {}),
    ...(safety.length > 0 ? { safety } : {}),
    ...(computable.mayBeInfinite ? { mayBeInfinite: true } : {}),
    compute: compute as Callable['compute'],
  }
}
