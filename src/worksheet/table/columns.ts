import { type FormulaCompiler, type ParsedForCompiling, RESERVED } from '../../language/index.ts'
import { notAName, reservedName } from '../document/words.ts'
import { dependencyOrder } from '../engine/dependency-order.ts'
import { NAME_PATTERN } from '../format/format.ts'
import type { Column } from '../schema/document.ts'
import { hasFormula } from './read-table.ts'
import * as words from './words.ts'

/** The number of rows that count, for formulas beside the columns: no column can have this name. */
export const COUNT = 'count'

/** How a table's columns depend on one another, apart from the sheet they are in. */
export interface ColumnPlan {
  /** By column; undefined where a column has no formula. */
  readonly formulas: readonly (ParsedForCompiling | undefined)[]
  /** The place of each column by its name; if two have one name, the first. */
  readonly places: ReadonlyMap<string, number>
  /** For each formula, the columns it uses. */
  readonly needs: readonly (readonly number[])[]
  /** The columns with a formula, in an order in which each comes after those it uses; those in a cycle are left out. */
  readonly order: readonly number[]
  /** The names its formulas use that are no columns of it. */
  readonly outside: readonly string[]
  /** By column: why it cannot have its name, or the cycle it is in. */
  readonly faults: ReadonlyMap<number, string>
}

const plans = new WeakMap<readonly Column[], { readonly reader: FormulaCompiler; readonly plan: ColumnPlan }>()

/** The columns of a table in the order they are computed, each with its compiled formula. */
export function columnPlan(columns: readonly Column[], reader: FormulaCompiler): ColumnPlan {
  const known = plans.get(columns)
  if (known?.reader === reader) return known.plan
  const plan = newPlan(columns, reader)
  plans.set(columns, { reader, plan })
  return plan
}

/** What a person calls a column. */
export const columnLabel = ({ label, name }: Column): string => label?.trim() || name

/** Why a column cannot have a name, or undefined where it can. */
export function refusedColumnName(name: string, others: Iterable<string>): string | undefined {
  if (name === '') return words.columnNeedsName
  if (!NAME_PATTERN.test(name)) return notAName(name)
  if (name === COUNT) return words.countIsRows
  if (RESERVED.has(name)) return reservedName(name)
  for (const other of others) if (other === name) return words.columnNameTaken(name)
  return undefined
}

/** A free name among columns, made from another: `width`, `width_2`, … */
export function freeColumnName(preferred: string, columns: readonly Column[]): string {
  const taken = new Set(columns.map(({ name }) => name))
  const base = refusedColumnName(preferred, []) === undefined ? preferred : preferred === COUNT ? 'number' : 'column'
  if (!taken.has(base)) return base
  const stem = base.replace(/_\d+$/, '').slice(0, 58)
  for (let n = 2; ; n++) if (!taken.has(`${stem}_${n}`)) return `${stem}_${n}`
}

function newPlan(columns: readonly Column[], reader: FormulaCompiler): ColumnPlan {
  const faults = new Map<number, string>()
  const places = new Map<string, number>()
  columns.forEach(({ name }, at) => {
    const refused = refusedColumnName(name, places.keys())
    if (refused) faults.set(at, refused)
    if (!places.has(name)) places.set(name, at)
  })
  const formulas = columns.map((column) => (hasFormula(column) ? reader.read(column.formula as string) : undefined))
  const mentions = formulas.map((formula) => formula?.mentions ?? [])
  const needs = mentions.map((names) => names.flatMap((name) => places.get(name) ?? []))
  const { sorted, cycles, behind } = dependencyOrder(needs)
  for (const [at, way] of cycles) {
    // Listed from this column on, where it is itself in the cycle.
    const start = Math.max(0, way.indexOf(at))
    const names = [...way.slice(start), ...way.slice(0, start)].map((one) => (columns[one] as Column).name)
    if (!faults.has(at)) faults.set(at, words.cycle([...names, names[0] as string]))
  }
  return {
    formulas,
    places,
    needs,
    order: [...sorted, ...behind].filter((at) => formulas[at]),
    outside: [...new Set(mentions.flat())].filter((name) => !places.has(name)),
    faults,
  }
}
