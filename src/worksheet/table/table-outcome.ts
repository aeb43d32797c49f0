import { doubt, standingCautions, type Type } from '../../language/index.ts'
import type { Engine } from '../engine/engine.ts'
import type { Node } from '../engine/node.ts'
import type { Outcome } from '../engine/outcome.ts'
import { leftOutInWords, leftOutRows, rowsComputed, rowsInWords } from './row-status.ts'

/** A schedule is shown by how many rows count; those that do not are a warning. */
export function scheduleOutcome(engine: Engine, node: Node): Outcome {
  const leftOut = leftOutRows(engine, node)
  const counted = rowsComputed(engine, node)?.counted.length ?? 0
  const columns = node.schedule?.columns ?? []
  const doubts = columns.flatMap(({ diagnostics }) => diagnostics.filter(({ severity }) => severity === 'warning'))
  const told = leftOutInWords(node, leftOut)
  return {
    state: 'value',
    value: engine.value(node),
    type: node.type as Type,
    shown: rowsInWords(counted, leftOut.length),
    offers: [],
    leftOut,
    warnings: [...(told === '' ? [] : [doubt(told, 0, 0)]), ...doubts],
    ...standingCautions(columns.flatMap(({ meaning }) => meaning?.calls ?? [])),
  }
}
