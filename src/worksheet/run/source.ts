import { type Computable, ComputeError, refusedValue, type Type, type Value } from '../../language/index.ts'
import type { Engine } from '../engine/engine.ts'
import { VALUE } from '../engine/engine-view.ts'
import { labelsOf } from '../engine/explain.ts'
import type { Node } from '../engine/node.ts'
import * as outcomeWords from '../engine/words.ts'
import type { TableCell } from '../schema/document.ts'
import { tableOf } from '../table/table-node.ts'
import { fitsSort, type RunInput, sortText } from './inputs.ts'
import * as words from './words.ts'

/** An input that gives nothing, and why. */
export interface MissingInput {
  readonly input: RunInput
  readonly why: string
}

/** Why an input gives nothing in one row. */
export class RowError extends Error {}

type InRow = (row: RowAt) => Value | undefined

export interface RowAt {
  readonly values: readonly (Value | undefined)[]
  /** Why a column has no value in this row. */
  why(column: number): string
}

export interface Source {
  readonly input: RunInput
  readonly type: Type
  /** The columns it uses. */
  readonly columns: readonly number[]
  readonly read: InRow
}

export const NO_ROW: RowAt = { values: [], why: () => '' }

/** An input’s formula made ready; or why it gives nothing in any row. */
export function sourceOf(
  engine: Engine,
  node: Node | undefined,
  table: TableCell | undefined,
  input: RunInput,
  formula: string,
): Source | MissingInput {
  const scope = tableOf(node)?.scope ?? engine.scope()
  const found = engine.compile(formula, scope)
  if (!found) return { input, why: outcomeWords.formulaLoading }
  const error = found.errors[0]
  const places = tableOf(node)?.plan.places
  const outside = found.uses.filter((name) => !places?.has(name))
  const absent = outside.filter((name) => cellValue(engine, name) === undefined)
  if (!found.meaning)
    return {
      input,
      why:
        absent.length > 0 && !error
          ? outcomeWords.needs(labelsOf(engine, absent))
          : (error?.message ?? outcomeWords.inError),
    }
  if (absent.length > 0) return { input, why: outcomeWords.needs(labelsOf(engine, absent)) }
  const { computable } = found.meaning
  const { type } = computable
  if (!fitsSort(type, input.is)) return { input, why: words.otherSort(sortText(input.is), formula) }
  try {
    const columns = found.uses.flatMap((name) => places?.get(name) ?? [])
    const read = reader(engine, computable, places, table?.columns.length ?? 0, columns)
    // What no column decides is the same in every row.
    if (columns.length > 0) return { input, type, columns, read }
    const value = read(NO_ROW) as Value
    return { input, type, columns, read: () => value }
  } catch (error) {
    if (!(error instanceof ComputeError || error instanceof RowError)) throw error
    return { input, why: error.message }
  }
}

const cellValue = (engine: Engine, name: string): Value | undefined => {
  const node = engine.named(name)
  return node && engine.state(node) === VALUE ? engine.value(node) : undefined
}

/** Runs a formula over an array of a row’s values, then what the sheet gives, then constants. */
function reader(
  engine: Engine,
  { program, inputs, mayBeInfinite }: Computable,
  places: ReadonlyMap<string, number> | undefined,
  width: number,
  needed: readonly number[],
): InRow {
  const local: (Value | undefined)[] = new Array(width).fill(undefined)
  const slots = Int32Array.from(inputs, (input) => {
    const place = 'cell' in input ? places?.get(input.cell) : undefined
    if (place !== undefined) return place
    return local.push('cell' in input ? cellValue(engine, input.cell) : input.constant) - 1
  })
  return (row) => {
    for (const at of needed) {
      const value = row.values[at]
      if (value === undefined) {
        const problem = row.why(at)
        if (problem === '') return undefined
        throw new RowError(problem)
      }
      local[at] = value
    }
    const value = program(local as Value[], slots)
    if (typeof value === 'string' || typeof value === 'boolean') return value
    const refused = refusedValue(value, mayBeInfinite)
    if (refused) throw new RowError(refused)
    return value
  }
}
