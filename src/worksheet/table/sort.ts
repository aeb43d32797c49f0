import type { Value } from '../../language/index.ts'
import type { Engine } from '../engine/engine.ts'
import type { Node } from '../engine/node.ts'
import type { TableCell } from '../schema/document.ts'
import { rowsComputed, valueAt } from './row-status.ts'

const TEXTS = new Intl.Collator('en', { numeric: true })

function compared(a: Value, b: Value): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b
  if (typeof a === 'boolean' && typeof b === 'boolean') return Number(b) - Number(a)
  return TEXTS.compare(String(a), String(b))
}

/**
 * The rows of a table in the order of a column's values: quantities by size, dates and times by when they are, text by
 * letters and the numbers in it. Rows that are equal keep their order, and rows without a value come last.
 */
export function sortedTable(engine: Engine, node: Node, column: number, descending = false): TableCell {
  const cell = node.cell as TableCell
  const computed = rowsComputed(engine, node)
  const keyed = cell.rows.map((row, at) => ({ row, value: valueAt(node, computed, at, column) }))
  keyed.sort((a, b) => {
    if (a.value === undefined || b.value === undefined)
      return Number(a.value === undefined) - Number(b.value === undefined)
    return descending ? compared(b.value, a.value) : compared(a.value, b.value)
  })
  return { ...cell, rows: keyed.map(({ row }) => row) }
}
