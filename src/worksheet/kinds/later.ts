import type { FunctionCell } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

/** A kind that the format reserves: a cell of it is preserved, and a sentence takes its place. */
export const FUNCTION: CellKind<FunctionCell> = {
  title: 'Function',
  computed: undefined,
  fresh: () => undefined,
  renamed: (cell) => cell,
}
