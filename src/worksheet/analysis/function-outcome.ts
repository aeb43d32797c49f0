import {
  computeOnce,
  type Diagnostic,
  explainFailure,
  type Library,
  problem,
  type Scope,
  showValue,
  type Type,
  type Value,
} from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import type { Engine } from '../engine/engine.ts'
import type { OwnFunction } from '../engine/own-functions.ts'
import type { FunctionCell } from '../schema/document.ts'
import * as words from './words.ts'

/** A worked example of a function, computed. */
export interface ExampleOutcome {
  readonly formula: string
  readonly gives: string
  /** What the formula gives; empty where it gives nothing. */
  readonly shown: string
  readonly passes: boolean
  /** Why it gives nothing. */
  readonly message: string
}

/** What a function of the sheet is, and whether its examples are right. */
export interface FunctionOutcome {
  /** `border(width, share)`, with the units that say what goes in. */
  readonly signature: string
  readonly diagnostics: readonly Diagnostic[]
  readonly examples: readonly ExampleOutcome[]
  /** It can be called. */
  readonly isDefined: boolean
}

/** How a function is written: its arguments with their units, `border(width [mm], share) [mm]`. */
export function functionSignature({ name, arguments: args = [], unit }: FunctionCell): string {
  const withUnit = (text: string, symbol: string | undefined): string => (symbol ? `${text} [${symbol}]` : text)
  return withUnit(`${name}(${args.map((one) => withUnit(one.name, one.unit)).join(', ')})`, unit)
}

/** The function a cell defines, with its examples computed; undefined where the engine does not have the cell. */
export function functionOutcomeOf(engine: Engine, id: string): FunctionOutcome | undefined {
  const found = engine.ownFunctions.find(({ cell }) => cell.id === id)
  if (!found) return undefined
  const { cell, callable, diagnostics } = found
  const { library } = engine.scope()
  return {
    signature: functionSignature(cell),
    diagnostics,
    examples: (cell.examples ?? [])
      .filter(({ formula, gives }) => formula.trim() !== '' || gives.trim() !== '')
      .map(({ formula, gives }) => ({ formula, gives, ...exampleOf(engine, library, found, formula, gives) })),
    isDefined: callable !== undefined,
  }
}

interface Computed {
  readonly value: Value
  readonly type: Type
}

function exampleOf(
  engine: Engine,
  library: Library,
  { unit }: OwnFunction,
  formula: string,
  gives: string,
): Pick<ExampleOutcome, 'shown' | 'passes' | 'message'> {
  const scope: Scope = { library, typeOf: () => undefined, names: () => [] }
  const found = computed(engine, scope, formula)
  if ('message' in found) return { shown: '', passes: false, message: found.message }
  const shown = showValue(found.value, found.type, unit).text
  const expected = computed(engine, scope, gives)
  if ('message' in expected) return { shown, passes: false, message: words.exampleGives(expected.message) }
  return { shown, passes: agrees(found, expected, gives, unit), message: '' }
}

function computed(engine: Engine, scope: Scope, formula: string): Computed | Diagnostic {
  const found = engine.compile(formula, scope)
  const computable = found?.meaning?.computable
  if (!computable) return found?.errors[0] ?? problem(words.notComputedYet, 0, 0)
  try {
    return { value: computeOnce(computable, () => 0).value, type: computable.type }
  } catch (error) {
    return explainFailure(error, formula)
  }
}

/** Whether a figure is the expected one, as exactly as that was written: `27.6 mm` is 27.55 to 27.65 mm. */
function agrees(found: Computed, expected: Computed, gives: string, unit: DisplayUnit | undefined): boolean {
  if (found.type.kind !== 'number' || expected.type.kind !== 'number')
    return showValue(found.value, found.type, unit).text === showValue(expected.value, expected.type, unit).text
  if (found.type.dimension !== expected.type.dimension) return false
  const [a, b] = [found.value as number, expected.value as number]
  // Of `1:13.2` or `1/125`, the second number counts.
  const [, whole = '', decimals = ''] = /^\s*[-−]?\s*(?:1\s*[:/]\s*)?(\d+)(?:\.(\d+))?(?![\d.eE])/.exec(gives) ?? []
  const written = Number(`${whole}.${decimals || 0}`)
  const step = written > 0 ? (Math.abs(b) / written) * 0.5 * 10 ** -decimals.length : 0
  return Math.abs(a - b) <= Math.max(step, 1e-9 * Math.abs(b)) * (1 + 1e-9)
}
