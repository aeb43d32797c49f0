import type { Type } from '../../language/index.ts'
import type { EngineView } from './engine-view.ts'
import type { Node, NodeCompilers } from './node.ts'
import type { Measured, Outcome } from './outcome.ts'
import type { DefineFunction } from './own-functions.ts'

/** Says how a measured value of a result differs from the computed one, and what to do about it. */
export type Compare = (
  node: Node,
  measured: number,
  computed: number,
  type: Type,
) => Pick<Measured, 'difference' | 'adjust'>

/** What the engine works with; some of it is loaded only when a sheet needs it. */
export interface Capabilities extends NodeCompilers {
  /** What defines the functions of a sheet. */
  readonly define?: DefineFunction
  readonly compare?: Compare
  readonly tables?: NonNullable<NodeCompilers['tables']> & { outcome(engine: EngineView, node: Node): Outcome }
}
