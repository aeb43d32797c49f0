import type { EngineView } from './engine-view.ts'
import type { Node, NodeCompilers } from './node.ts'
import type { Outcome } from './outcome.ts'

/** What the engine works with; some of it is loaded only when a sheet needs it. */
export interface Capabilities extends NodeCompilers {
  readonly tables?: NonNullable<NodeCompilers['tables']> & { outcome(engine: EngineView, node: Node): Outcome }
}
