import { showValue, type Type, type Value } from '../../language/index.ts'
import { type DisplayUnit, defaultUnit, NONE } from '../../units/index.ts'
import type { Engine } from '../engine/engine.ts'
import type { Node } from '../engine/node.ts'
import { columnLabel } from './columns.ts'
import { rowReader } from './read-table.ts'
import { rowsComputed, valueAt } from './row-status.ts'
import type { CompiledColumn } from './table-node.ts'
import { tableOf } from './table-node.ts'

/** Digits enough for a figure to come back the same. */
const DIGITS = 12

/** The unit of a column's figures where it declares none: that of its greatest. */
function unitOf(
  type: Type | undefined,
  unit: DisplayUnit | undefined,
  values: readonly (Value | undefined)[],
): DisplayUnit | undefined {
  if (type?.kind !== 'number' || unit || type.dimension === NONE) return unit
  const greatest = values.reduce<number>((most, value) => Math.max(most, Math.abs((value as number) ?? 0)), 0)
  return defaultUnit(greatest, type.dimension)
}

const digits = (value: number): string => `${Number(value.toPrecision(DIGITS))}`

function written(value: Value, type: Type, unit: DisplayUnit | undefined): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'string') return value
  if (typeof value !== 'number' || type.kind !== 'number') return showValue(value, type).text
  if (!Number.isFinite(value)) return value > 0 ? 'infinity' : '-infinity'
  if ((unit?.notation ?? type.notation) === 'ratio' && value > 0)
    return value > 1 ? `${digits(value)}:1` : `1:${digits(1 / value)}`
  return unit ? digits((value - unit.offset) / unit.factor) : digits(value)
}

/** A column as figures in one unit. */
export interface WrittenColumn {
  readonly type: Type | undefined
  readonly unit: DisplayUnit | undefined
  /** By row; what has no value is left as typed. */
  readonly texts: readonly string[]
}

/** The columns of a table as they are read and worked out, written out to their last digit that counts. */
export function writtenColumns(engine: Engine, node: Node): WrittenColumn[] {
  if (node.cell.kind !== 'table') return []
  const { columns, rows } = node.cell
  const computed = rowsComputed(engine, node)
  const meanings: readonly Pick<CompiledColumn, 'type' | 'unit'>[] =
    tableOf(node)?.columns ?? rowReader(columns).columns
  return columns.map((_, at) => {
    const { type, unit } = meanings[at] as Pick<CompiledColumn, 'type' | 'unit'>
    const values = rows.map((_, row) => valueAt(node, computed, row, at))
    const own = unitOf(type, unit, values)
    const texts = values.map((value, row) =>
      value === undefined || !type ? (rows[row]?.[at] ?? '') : written(value, type, own),
    )
    return { type, unit: own, texts }
  })
}

/**
 * A table as rows of text for other programs: headings with the unit first, then every row, bare figures in that unit,
 * formula columns as computed. What cannot be read is written as typed.
 */
export function exportRows(engine: Engine, node: Node): string[][] {
  if (node.cell.kind !== 'table') return []
  const { columns, rows } = node.cell
  const written = writtenColumns(engine, node)
  const labels = columns.map(columnLabel)
  const headings = columns.map(({ name }, at) => {
    const label = labels[at] as string
    const called = labels.indexOf(label) === labels.lastIndexOf(label) ? label : name
    const symbol = written[at]?.unit?.symbol
    return symbol ? `${called} [${symbol}]` : called
  })
  return [headings, ...rows.map((_, row) => written.map(({ texts }) => texts[row] as string))]
}
