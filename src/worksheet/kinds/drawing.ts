import { KIND_TITLES } from '../format/words.ts'
import type { Drawing } from '../schema/document.ts'
import { type CellKind, renamedFormulas } from './kind.ts'

export const DRAWING: CellKind<Drawing> = {
  title: KIND_TITLES.drawing,
  computed: undefined,
  fresh: ({ id }) => ({ kind: 'drawing', id, drawing: 'set-up', from: {} }),
  shown: ({ from }) => Object.values(from),
  sets: ({ moves = [] }) => moves,
  renamed: (cell, renaming) => ({
    ...cell,
    from: renamedFormulas(cell.from, renaming),
    ...(cell.moves ? { moves: cell.moves.map(renaming.one) } : {}),
  }),
}
