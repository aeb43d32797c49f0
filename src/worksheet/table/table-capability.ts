import { cautionsOf, type Type, warning } from '../../language/index.ts'
import type { EngineView } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import type { Outcome } from '../engine/outcome.ts'
import { omittedRows, omittedRowsText, rowCountText, rowsComputed } from './row-status.ts'
import { checkTable, namesInTable, tableOf } from './table-node.ts'

/** A table is shown by how many rows count; those that do not are a warning. */
function tableOutcome(engine: EngineView, node: Node): Outcome {
  const leftOut = omittedRows(engine, node)
  const counted = rowsComputed(engine, node)?.counted.length ?? 0
  const columns = tableOf(node)?.columns ?? []
  const doubts = columns.flatMap(({ diagnostics }) => diagnostics.filter(({ severity }) => severity === 'warning'))
  const omitted = omittedRowsText(node, leftOut)
  return {
    state: 'value',
    value: engine.value(node),
    type: node.type as Type,
    shown: rowCountText(counted, leftOut.length),
    offers: [],
    leftOut,
    warnings: [...(omitted === '' ? [] : [warning(omitted, 0, 0)]), ...doubts],
    ...cautionsOf(columns.flatMap(({ meaning }) => meaning?.calls ?? [])),
  }
}

/** What the engine makes of a table; a sheet without one does without. */
export const TABLES = { namesIn: namesInTable, check: checkTable, outcome: tableOutcome }
