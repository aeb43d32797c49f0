import type { Result } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const RESULT: CellKind<Result> = {
  title: 'Result',
  computed: 'formula',
  fresh: ({ id, freeName }) => ({ kind: 'result', id, name: freeName('result'), formula: '' }),
  formula: ({ formula }) => formula,
  formulas: ({ formula }) => [formula],
  renamed: (cell, { formula }) => ({ ...cell, formula: formula(cell.formula) }),
}
