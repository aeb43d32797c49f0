import { type NumberType, showValue, type Value } from '../../language/index.ts'
import type { Dimension, DisplayUnit } from '../../units/index.ts'
import { labelOf } from '../document/label.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Node } from '../engine/node.ts'
import type { Range, TableCell } from '../schema/document.ts'
import { columnLabel } from '../table/columns.ts'
import { rowsComputed, valueAt } from '../table/row-status.ts'
import { type CompiledColumn, tableOf } from '../table/table-node.ts'
import { type Followed, figureOf, NOTHING, type RangeTable, showIn, suitingUnit } from './followed.ts'
import { RangeInputError } from './range-values.ts'
import * as words from './words.ts'

/** Whether a range plots columns of a table instead of varying a given. */
export const isColumnPlot = (sheet: Sheet, { of }: Range): boolean =>
  of !== undefined && sheet.named(of.replace(/\..*$/, ''))?.kind === 'table'

/** The rows of a table that count, with the values of its columns. */
interface Rows {
  readonly cell: TableCell
  readonly columnOf: (name: string) => Column
}

interface Column {
  readonly meaning: CompiledColumn
  /** One for each row that counts; undefined where its field is empty. */
  readonly values: readonly (Value | undefined)[]
}

function rowsOf(sheet: Sheet, name: string): Rows {
  const cell = sheet.named(name)
  if (cell?.kind !== 'table') throw new RangeInputError(words.noTable(name))
  const node = sheet.engine.named(name) as Node
  const computed = rowsComputed(sheet.engine, node)
  if (!computed) throw new RangeInputError(words.tableNotComputed(labelOf(cell)))
  if (computed.counted.length === 0) throw new RangeInputError(words.tableEmpty(labelOf(cell)))
  return {
    cell,
    columnOf: (column) => {
      const at = cell.columns.findIndex((one) => one.name === column)
      const meaning = tableOf(node)?.columns[at]
      if (!meaning?.type) throw new RangeInputError(words.noColumn(labelOf(cell), column))
      return { meaning, values: computed.counted.map((row) => valueAt(node, computed, row, at)) }
    },
  }
}

const isNumber = (value: Value | undefined): value is number => typeof value === 'number'

/** The unit of a column of quantities; undefined of any other. */
function unitOf({ meaning: { type, unit }, values }: Column): DisplayUnit | undefined {
  if (type?.kind !== 'number') return undefined
  if (unit) return unit
  return type.notation ? showIn(type.notation) : suitingUnit(values.filter(isNumber), type.dimension)
}

const MOMENTS: Readonly<Record<string, RangeTable['moments']>> = {
  date: 'days',
  'date and time': 'days',
  time: 'times of day',
}

/** A moment as a column has it, `2026-11-25 14:30` or `14:30:15`, in seconds: since 1970, or of its day. */
function secondsOf(moment: string): number {
  const [first, ...rest] = moment.split(' ') as [string, ...string[]]
  const isDay = first.includes('-')
  const [hours = 0, minutes = 0, seconds = 0] = (isDay ? (rest[0] ?? '') : first).split(':').map(Number)
  return (isDay ? Date.parse(`${first}T00:00:00Z`) / 1000 : 0) + hours * 3600 + minutes * 60 + seconds
}

/** Plots columns of a table over another of its columns. Throws RangeInputError, which says what to fill in or correct. */
export function columnPlot(sheet: Sheet, range: Range): RangeTable {
  const [name, over] = (range.of ?? '').split('.') as [string, string | undefined]
  const rows = rowsOf(sheet, name)
  const label = labelOf(rows.cell)
  if (over === undefined) throw new RangeInputError(words.chooseColumn(label))
  if (!range.columns?.length) throw new RangeInputError(words.choosePlotted(label))
  const along = rows.columnOf(over)
  const unit = unitOf(along)
  const moments = along.meaning.type?.kind === 'text' ? MOMENTS[along.meaning.column.entry ?? ''] : undefined
  if (!unit && !moments) throw new RangeInputError(words.notPlotted(columnLabel(along.meaning.column)))
  const figureAlong = (value: Value | undefined): number | undefined =>
    moments ? (typeof value === 'string' ? secondsOf(value) : undefined) : figureOf(value, unit)
  const placed = along.values.flatMap((value, row) => {
    const figure = figureAlong(value)
    return figure === undefined || !Number.isFinite(figure) ? [] : [{ row, figure, value: value as Value }]
  })
  if (placed.length === 0) throw new RangeInputError(words.tableEmpty(label))
  const type = along.meaning.type as NumberType
  const figures = placed.map(({ figure }) => figure)
  return {
    varied: along.meaning.column,
    unit,
    values: [],
    shown: placed.map(({ value }) => (moments ? String(value) : showValue(value, type, unit).text)),
    figures,
    present: undefined,
    presentAt: undefined,
    followed: range.columns.map((column) =>
      followed(
        rows.columnOf(column),
        placed.map(({ row }) => row),
      ),
    ),
    byFactors: false,
    isContinuous: false,
    isJoined: figures.every((figure, at) => at === 0 || figure > (figures[at - 1] as number)),
    ...(moments ? { moments } : {}),
    at: () => range.columns?.map(() => undefined) ?? [],
    filledWith: undefined,
  }
}

function followed(column: Column, rows: readonly number[]): Followed {
  const { meaning, values } = column
  const unit = unitOf(column)
  const taken = rows.map((row) => values[row])
  return {
    cell: meaning.column,
    unit,
    shown: taken.map((value) =>
      value === undefined || !meaning.type ? NOTHING : showValue(value, meaning.type, unit).text,
    ),
    figures: taken.map((value) => {
      const figure = figureOf(value, unit)
      return figure !== undefined && Number.isFinite(figure) ? figure : undefined
    }),
    present: undefined,
    measured: false,
  }
}

/**
 * The different values of a column such as `originals.width`, in coherent SI and in their order; undefined where no column
 * is named. Throws RangeInputError.
 */
export function columnValues(
  sheet: Sheet,
  of: string | undefined,
  dimension: Dimension | undefined,
): readonly number[] | undefined {
  if (of === undefined) return undefined
  const [name, column] = of.split('.') as [string, string | undefined]
  const rows = rowsOf(sheet, name)
  if (column === undefined) throw new RangeInputError(words.chooseColumn(labelOf(rows.cell)))
  const { meaning, values } = rows.columnOf(column)
  const { type } = meaning
  if (type?.kind !== 'number' || (dimension && type.dimension !== dimension))
    throw new RangeInputError(words.otherQuantity(columnLabel(meaning.column)))
  // Equal to nine digits is the same value.
  return [...new Set(values.filter(isNumber).map((value) => Number(value.toPrecision(9))))].sort((a, b) => a - b)
}
