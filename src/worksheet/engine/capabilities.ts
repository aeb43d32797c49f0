import type { EngineView } from './engine-view.ts'
import type { Node, NodeCompilers } from './node.ts'
import type { Outcome } from './outcome.ts'
import type { DefineFunction } from './own-functions.ts'

/** What the engine works with; some of it is loaded only when a sheet needs it. */
export interface Capabilities extends NodeCompilers {
  /** What defines the functions of a sheet. */
  readonly define?: DefineFunction
  readonly tables?: NonNullable<NodeCompilers['tables']> & { outcome(engine: EngineView, node: Node): Outcome }
}
