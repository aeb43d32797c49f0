import {
  type Computable,
  ComputeError,
  type Program,
  type RecordValue,
  refusedValue,
  type Value,
  withGaps,
} from '../../language/index.ts'
import type { Column, TableCell } from '../schema/document.ts'
import { COUNT, type ColumnPlan, columnLabel } from './columns.ts'
import { hasFormula, type RowReader } from './read-table.ts'
import * as words from './words.ts'

/** The formula of a column, ready to compute. */
export interface RowFormula {
  /** Its column's place. */
  readonly at: number
  readonly computable: Computable
}

/** Why a formula gives no figure in a row. */
export interface RowFailure {
  readonly column: number
  readonly message: string
}

/** The rows of a table, computed with one set of the sheet's values. */
export interface RowsComputed {
  /** By place of the column, then by row; only of columns with a formula. */
  readonly figures: ReadonlyMap<number, readonly (Value | undefined)[]>
  readonly failures: ReadonlyMap<number, RowFailure>
  /** The places of the rows that count. */
  readonly counted: readonly number[]
}

/** A formula with the places of its arguments among a row's values. */
interface Step {
  readonly at: number
  readonly program: Program
  readonly slots: Int32Array
  readonly mayBeInfinite: boolean
  /** The columns it cannot do without. */
  readonly needs: readonly number[]
  /** Its own field may stay empty where one it needs is. */
  readonly mayBeEmpty: boolean
}

/** What one row gave: by formula, why one gave nothing, and whether the row counts. */
interface RowOutcome {
  readonly values: readonly (Value | undefined)[]
  readonly failure: RowFailure | undefined
  readonly counts: boolean
}

const BLANK: RowOutcome = { values: [], failure: undefined, counts: false }

/** By the row's fields: an edit of a table leaves the other rows the same objects. */
type RowOutcomes = WeakMap<readonly string[], RowOutcome>

interface LastComputed {
  readonly steps: readonly Step[]
  readonly constants: readonly Value[]
  readonly outside: readonly Value[]
  readonly rows: RowOutcomes
}

/** What the rows of a table last gave, by its columns: an edit computes the rows it changes. */
const lastComputed = new WeakMap<readonly Column[], LastComputed>()

const sameValues = (a: readonly Value[], b: readonly Value[]): boolean =>
  a.length === b.length && a.every((value, at) => Object.is(value, b[at]))

const sameSteps = (a: readonly Step[], b: readonly Step[]): boolean =>
  a.length === b.length &&
  a.every((step, at) => {
    const other = b[at] as Step
    return (
      step.at === other.at &&
      step.program === other.program &&
      step.mayBeInfinite === other.mayBeInfinite &&
      step.slots.every((slot, place) => slot === other.slots[place])
    )
  })

/**
 * Computes a table row by row: every column's formula is one program, run over an array of the row's values,
 * then what the sheet gives, then the constants.
 */
export class RowProgram {
  /** The names of the sheet's cells it needs, in the order of the program's arguments. */
  readonly outside: readonly string[]
  private readonly steps: readonly Step[]
  private readonly constants: readonly Value[]
  private readonly width: number
  /** By the record each gave: what is shown need not be computed again. */
  private readonly runs = new WeakMap<object, RowsComputed>()

  constructor(
    private readonly cell: TableCell,
    private readonly reader: RowReader,
    plan: ColumnPlan,
    formulas: readonly RowFormula[],
  ) {
    const width = cell.columns.length
    this.width = width
    const outside = new Map<string, number>()
    const constants: Value[] = []
    for (const { computable } of formulas)
      for (const input of computable.inputs)
        if ('cell' in input && !plan.places.has(input.cell) && !outside.has(input.cell))
          outside.set(input.cell, width + outside.size)
    const slotOf = (input: Computable['inputs'][number]): number => {
      if ('cell' in input) return (plan.places.get(input.cell) ?? outside.get(input.cell)) as number
      constants.push(input.constant)
      return width + outside.size + constants.length - 1
    }
    this.steps = formulas.map(({ at, computable }) => ({
      at,
      program: computable.program,
      slots: Int32Array.from(computable.inputs, slotOf),
      mayBeInfinite: computable.mayBeInfinite,
      needs: plan.needs[at] as readonly number[],
      mayBeEmpty: (cell.columns[at] as Column).may_be_empty === true,
    }))
    this.outside = [...outside.keys()]
    this.constants = constants
  }

  /** Gives the table's record, as any program gives a value. */
  readonly program: Program = (values, slots) => {
    const computed = this.compute(this.outsideOf(values, slots))
    const record = this.record(computed)
    this.runs.set(record, computed)
    return record
  }

  /** The rows computed with this record; computed now where another program gave it. */
  behind(record: Value, values: readonly Value[], slots: ArrayLike<number>): RowsComputed {
    const known = this.runs.get(record as RecordValue)
    if (known) return known
    const computed = this.compute(this.outsideOf(values, slots))
    this.runs.set(record as RecordValue, computed)
    return computed
  }

  private outsideOf(values: readonly Value[], slots: ArrayLike<number>): Value[] {
    return this.outside.map((_, i) => values[slots[i] as number] as Value)
  }

  private compute(outside: readonly Value[]): RowsComputed {
    const { rows } = this.cell
    const known = this.rowsKnown(outside)
    const { width } = this
    const local: (Value | undefined)[] = [...new Array(width).fill(undefined), ...outside, ...this.constants]
    const figures = new Map(this.steps.map(({ at }) => [at, new Array<Value | undefined>(rows.length)]))
    const columns = this.steps.map(({ at }) => figures.get(at) as (Value | undefined)[])
    const failures = new Map<number, RowFailure>()
    const counted: number[] = []
    for (const [r, fields] of rows.entries()) {
      let row = known.get(fields)
      if (!row) {
        row = this.computeRow(fields, local)
        known.set(fields, row)
      }
      if (row === BLANK) continue
      for (const [step, value] of row.values.entries()) (columns[step] as (Value | undefined)[])[r] = value
      if (row.failure) failures.set(r, row.failure)
      if (row.counts) counted.push(r)
    }
    return { figures, failures, counted }
  }

  /** What rows gave with the same formulas and the same values of the sheet; it begins anew where one of these differs. */
  private rowsKnown(outside: readonly Value[]): RowOutcomes {
    const { steps, constants } = this
    const known = lastComputed.get(this.cell.columns)
    if (
      known &&
      sameValues(known.outside, outside) &&
      sameValues(known.constants, constants) &&
      sameSteps(known.steps, steps)
    )
      return known.rows
    const rows: RowOutcomes = new WeakMap()
    lastComputed.set(this.cell.columns, { steps, constants, outside, rows })
    return rows
  }

  /** Computes one row over the array of its values, the columns of which are written here. */
  private computeRow(fields: readonly string[], local: (Value | undefined)[]): RowOutcome {
    const { columns } = this.cell
    const { values, problems, isBlank } = this.reader.read(fields)
    if (isBlank) return BLANK
    for (let c = 0; c < this.width; c++) local[c] = values[c]
    const found: (Value | undefined)[] = []
    let failure: RowFailure | undefined
    let counts = problems.length === 0
    for (const step of this.steps) {
      found.push(undefined)
      const missing = step.needs.find((need) => local[need] === undefined)
      if (missing !== undefined) {
        if (step.mayBeEmpty || !counts) continue
        failure = { column: step.at, message: emptyNeed(columns[missing] as Column) }
        counts = false
        continue
      }
      try {
        const value = step.program(local as Value[], step.slots)
        if (typeof value === 'number' ? !Number.isFinite(value) : typeof value === 'object') {
          const refused = refusedValue(value, step.mayBeInfinite)
          if (refused) throw new ComputeError(refused)
        }
        local[step.at] = value
        found[found.length - 1] = value
      } catch (error) {
        if (!(error instanceof ComputeError)) throw error
        failure ??= { column: step.at, message: error.message }
        counts = false
      }
    }
    return { values: found, failure, counts }
  }

  private record({ figures, counted }: RowsComputed): RecordValue {
    const { columns, rows } = this.cell
    const lists = columns.map((): Value[] => [])
    const filled = columns.map((): number[] => [])
    for (const [at, r] of counted.entries()) {
      const { values } = this.reader.read(rows[r] as readonly string[])
      for (let c = 0; c < lists.length; c++) {
        const value = values[c] ?? figures.get(c)?.[r]
        if (value === undefined) continue
        ;(lists[c] as Value[]).push(value)
        ;(filled[c] as number[]).push(at)
      }
    }
    return Object.assign(Object.create(null), {
      [COUNT]: counted.length,
      ...Object.fromEntries(
        columns.map(({ name }, c) => [
          name,
          withGaps(lists[c] as Value[], { rows: filled[c] as number[], of: counted.length }),
        ]),
      ),
    })
  }
}

const emptyNeed = (column: Column): string =>
  hasFormula(column) ? words.noFigure(columnLabel(column)) : words.neededHere(columnLabel(column))
