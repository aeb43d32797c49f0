import { KIND_TITLES } from '../format/words.ts'
import type { Result } from '../schema/document.ts'
import { type CellKind, mapValues } from './kind.ts'
import { renamedReading } from './reading.ts'

export const RESULT: CellKind<Result> = {
  title: KIND_TITLES.result,
  computed: 'formula',
  fresh: ({ id, freeName }) => ({ kind: 'result', id, name: freeName('result'), formula: '' }),
  formula: ({ formula }) => formula,
  formulas: ({ formula }) => [formula],
  listed: ({ determines, constants = {} }) => [determines ?? [], Object.values(constants)].flat(),
  renamed: (cell, { one, formula }) => ({
    ...cell,
    formula: formula(cell.formula),
    ...(cell.determines === undefined ? {} : { determines: one(cell.determines) }),
    ...(cell.constants ? { constants: mapValues(cell.constants, one) } : {}),
    ...renamedReading(cell, one),
  }),
}
