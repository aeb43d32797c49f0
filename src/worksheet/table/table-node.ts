import {
  type CompiledFormula,
  type Computable,
  type Diagnostic,
  type FormulaCompiler,
  fitsDeclared,
  list,
  number,
  PLAIN_NUMBER,
  problem,
  record,
  type Scope,
  type Type,
  warning,
} from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import type { Node } from '../engine/node.ts'
import type { Column, TableCell } from '../schema/document.ts'
import { COUNT, type ColumnPlan, columnLabel, columnPlan } from './columns.ts'
import { type RowReader, rowReader } from './read-table.ts'
import { type RowFormula, RowProgram } from './rows.ts'
import * as words from './words.ts'

/** What a column of a table means in its sheet. */
export interface CompiledColumn {
  readonly column: Column
  /** Of one value of it; undefined where it is in error. */
  readonly type: Type | undefined
  readonly unit: DisplayUnit | undefined
  /** What is wrong or doubtful in its formula, its name or its unit. */
  readonly diagnostics: readonly Diagnostic[]
  readonly meaning?: CompiledFormula
}

/** What a table means in its sheet. */
export interface CompiledTable {
  readonly reader: RowReader
  readonly plan: ColumnPlan
  readonly columns: readonly CompiledColumn[]
  /** What its rows see: its columns by name, before the sheet's. */
  readonly scope: Scope
  /** Undefined while a column is in error. */
  readonly rows: RowProgram | undefined
}

/** A table's compiled form, which the engine stores without knowing what it is. */
export const tableOf = (node: Node | undefined): CompiledTable | undefined => node?.table as CompiledTable | undefined

/** The names in a table's formulas that are not its own columns. */
export const namesInTable = ({ columns }: TableCell, reader: FormulaCompiler): readonly string[] =>
  columnPlan(columns, reader).outside

/** A table's record: how many rows count, and each column as a list. */
const TABLE_RECORD = 'table'

/** Reads a table's fields, checks its columns' formulas, and makes the program that gives its record. */
export function checkTable(node: Node, cell: TableCell, scope: Scope, formulas: FormulaCompiler): void {
  node.type = undefined
  node.unit = undefined
  node.computable = undefined
  const plan = columnPlan(cell.columns, formulas)
  const reader = rowReader(cell.columns)
  const known = new Map<number, Type>()
  const rowScope = scopeOfRow(cell.columns, plan, known, scope)
  const columns: CompiledColumn[] = reader.columns.map(({ column, type, unit, error }, at) => {
    if (type) known.set(at, type)
    return { column, type, unit, diagnostics: ownFaults(plan, column, at, error) }
  })
  const ready: RowFormula[] = []
  node.awaitingCompiler = false
  for (const at of plan.order) {
    const found = checkColumn(columns[at] as CompiledColumn, at, plan, rowScope)
    if (!found) {
      node.awaitingCompiler = true
      continue
    }
    const { meaning, formula } = found
    columns[at] = meaning
    if (meaning.type) known.set(at, meaning.type)
    if (formula) ready.push({ ...formula, at })
  }
  node.errors = errorsOf(columns)
  // A column may lack its type for an error elsewhere in the sheet.
  const isSound = node.errors.length === 0 && columns.every(({ type }) => type)
  const rows = isSound ? new RowProgram(cell, reader, plan, ready) : undefined
  // What else is written for its rows, such as a condition in the footer, is explained at once.
  node.table = { reader, plan, columns, scope: { ...rowScope, isDraft: false }, rows } satisfies CompiledTable
  if (!rows) return
  node.type = record(
    TABLE_RECORD,
    Object.fromEntries([
      [COUNT, PLAIN_NUMBER],
      ...columns.map(({ column, type }) => [column.name, list(type as Type)] as const),
    ]),
  )
  node.computable = {
    type: node.type,
    program: rows.program,
    inputs: rows.outside.map((name) => ({ cell: name })),
    spans: [],
    mayBeInfinite: ready.some(({ computable }) => computable.mayBeInfinite),
  }
}

function ownFaults(plan: ColumnPlan, column: Column, at: number, unit: Diagnostic | undefined): Diagnostic[] {
  const fault = plan.faults.get(at)
  return [
    ...(fault === undefined ? [] : [problem(fault, 0, plan.formulas[at] ? (column.formula as string).length : 0)]),
    ...(unit ? [unit] : []),
  ]
}

/** A row's other columns by name, shadowing the sheet's. */
function scopeOfRow(
  columns: readonly Column[],
  { places }: ColumnPlan,
  known: ReadonlyMap<number, Type>,
  sheet: Scope,
): Scope {
  return {
    ...sheet,
    typeOf: (name) => {
      const at = places.get(name)
      return at === undefined ? sheet.typeOf(name) : (known.get(at) ?? 'unknown')
    },
    names: () => [...new Set([...columns.map(({ name }) => name), ...sheet.names()])],
  }
}

interface CheckedColumn {
  readonly meaning: CompiledColumn
  readonly formula?: { readonly computable: Computable }
}

/** Undefined where the formula is known to the checker alone, which is not here yet. */
function checkColumn(before: CompiledColumn, at: number, plan: ColumnPlan, scope: Scope): CheckedColumn | undefined {
  const formula = plan.formulas[at]
  if (!formula) return { meaning: before }
  const text = before.column.formula as string
  // Not written yet: the table waits for it.
  if (text.trim() === '') return { meaning: before }
  const understood = formula.check(scope)
  if (!understood) return undefined
  const found = [...before.diagnostics, ...understood.errors, ...(understood.meaning?.warnings ?? [])]
  const computable = understood.meaning?.computable
  const misfit = computable && before.unit && fitsDeclared(computable.type, text, before.unit, scope)
  if (misfit) found.push(misfit)
  if (understood.meaning?.limits) found.push(warning(words.limitsIgnored, 0, text.length))
  const meaning = { ...before, ...(understood.meaning ? { meaning: understood.meaning } : {}), diagnostics: found }
  if (!computable || found.some(({ severity }) => severity === 'error')) return { meaning }
  return { meaning: { ...meaning, type: asDeclared(computable.type, before.unit) }, formula: { computable } }
}

/** A column written in a way of the trade gives a list written so. */
const asDeclared = (type: Type, unit: DisplayUnit | undefined): Type =>
  type.kind === 'number' && unit?.notation ? number(type.dimension, unit.notation) : type

/** The errors of all columns, each with the column it is in. */
const errorsOf = (columns: readonly CompiledColumn[]): Diagnostic[] =>
  columns.flatMap(({ column, diagnostics }) =>
    diagnostics
      .filter(({ severity }) => severity === 'error')
      .map(({ message }) => problem(words.inColumn(columnLabel(column), message), 0, 0)),
  )
