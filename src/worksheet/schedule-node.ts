import type { Scope } from '../language/index.ts'
import type { Schedule } from './document.ts'
import type { Node } from './node.ts'

/** The names in a schedule's formulas that are not its own columns. */
export function namesInSchedule(_: Schedule): readonly string[] {
  return []
}

/** Reads a schedule's fields, checks its columns' formulas, and makes the program that gives its record. */
export function checkSchedule(node: Node, _: Schedule, __: Scope): void {
  node.errors = []
}
