import { KIND_TITLES } from '../format/words.ts'
import type { FunctionCell } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const FUNCTION: CellKind<FunctionCell> = {
  title: KIND_TITLES.function,
  computed: undefined,
  fresh: ({ id, cells, freeName }) => ({
    kind: 'function',
    id,
    name: freeFunctionName(
      freeName('function'),
      cells.filter((cell) => cell.kind === 'function'),
    ),
    arguments: [],
    formula: '',
    examples: [],
  }),
  formulas: ({ formula = '', examples = [] }) => [formula, ...examples.map((example) => example.formula)],
  // Its formula names its own arguments alone.
  renamed: (cell) => cell,
}

function freeFunctionName(preferred: string, others: readonly FunctionCell[]): string {
  const taken = new Set(others.map(({ name }) => name))
  if (!taken.has(preferred)) return preferred
  for (let n = 2; ; n++) if (!taken.has(`${preferred}_${n}`)) return `${preferred}_${n}`
}
