import type { Program, Value } from '../../language/index.ts'
import type { Node } from './node.ts'

/** The state of a cell in the engine's arrays. */
export const VALUE = 0
export const WAITING = 1
export const ERROR = 2

/** The cells by position in dependency order, followed by the constants. Read only, and valid until the next change. */
export interface Layout {
  /** Different after every change: what was derived from an older layout is stale. */
  readonly edition: number
  readonly order: readonly Node[]
  readonly values: readonly Value[]
  readonly states: Uint8Array
  /** Undefined where a cell's value is given or measured. */
  readonly programs: readonly (Program | undefined)[]
  readonly slots: readonly Int32Array[]
  readonly needs: readonly Int32Array[]
  readonly dependants: readonly (readonly number[])[]
  /** The positions of cells whose own text may give limits. */
  readonly limited: readonly number[]
}

/** What other modules may read of the engine. */
export interface EngineView {
  readonly layout: Layout
  positionOf(node: Node): number
  state(node: Node): number
  value(node: Node): Value
  /** Whether another cell further up has the same name. */
  isDuplicate(node: Node): boolean
}
