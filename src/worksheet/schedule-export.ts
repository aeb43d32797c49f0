import type { Type, Value } from '../language/index.ts'
import { type DisplayUnit, defaultUnit, NONE } from '../units/index.ts'
import type { Engine } from './engine.ts'
import type { Node } from './node.ts'
import { columnLabel } from './schedule-columns.ts'
import type { ColumnMeaning } from './schedule-node.ts'
import { rowsComputed, valueAt } from './schedule-standing.ts'
import { rowReader } from './schedule-table.ts'

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
  if (typeof value !== 'number' || type.kind !== 'number') return JSON.stringify(value)
  if (!Number.isFinite(value)) return value > 0 ? 'infinity' : '-infinity'
  if ((unit?.notation ?? type.notation) === 'ratio' && value > 0)
    return value > 1 ? `${digits(value)}:1` : `1:${digits(1 / value)}`
  return unit ? digits((value - unit.offset) / unit.factor) : digits(value)
}

/**
 * A schedule as rows of text for other programs: headings with the unit first, then every row, bare figures in that unit,
 * formula columns as computed. What cannot be read stands as typed.
 */
export function exportRows(engine: Engine, node: Node): string[][] {
  if (node.cell.kind !== 'schedule') return []
  const { columns, rows } = node.cell
  const computed = rowsComputed(engine, node)
  const meanings: readonly Pick<ColumnMeaning, 'type' | 'unit'>[] = node.schedule?.columns ?? rowReader(columns).columns
  const values = columns.map((_, c) => rows.map((_, r) => valueAt(node, computed, r, c)))
  const units = columns.map((_, c) => unitOf(meanings[c]?.type, meanings[c]?.unit, values[c] as (Value | undefined)[]))
  const labels = columns.map(columnLabel)
  const headings = columns.map((column, c) => {
    const label =
      labels.indexOf(labels[c] as string) === labels.lastIndexOf(labels[c] as string) ? labels[c] : column.name
    const symbol = units[c]?.symbol
    return symbol ? `${label} [${symbol}]` : `${label}`
  })
  const body = rows.map((row, r) =>
    columns.map((_, c) => {
      const value = values[c]?.[r]
      const type = meanings[c]?.type
      return value === undefined || !type ? (row[c] ?? '') : written(value, type, units[c])
    }),
  )
  return [headings, ...body]
}
