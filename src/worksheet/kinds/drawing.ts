import { KIND_TITLES } from '../format/words.ts'
import type { Drawing } from '../schema/document.ts'
import { type CellKind, mapValues } from './kind.ts'

export const DRAWING: CellKind<Drawing> = {
  title: KIND_TITLES.drawing,
  computed: undefined,
  fresh: ({ id }) => ({ kind: 'drawing', id, drawing: 'set-up', from: {} }),
  shown: ({ from }) => Object.values(from),
  sets: ({ moves = [] }) => moves,
  renamed: (cell, { one, formula }) => ({
    ...cell,
    from: mapValues(cell.from, formula),
    ...(cell.moves ? { moves: cell.moves.map(one) } : {}),
  }),
}
