import { KIND_TITLES } from '../format/words.ts'
import type { Frame } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const FRAME: CellKind<Frame> = {
  title: KIND_TITLES.frame,
  computed: 'given',
  fresh: ({ id, freeName }) => ({ kind: 'frame', id, name: freeName('frame') }),
  sets: ({ fills = {} }) => Object.values(fills),
  renamed: (cell, { one }) =>
    cell.fills
      ? { ...cell, fills: Object.fromEntries(Object.entries(cell.fills).map(([part, name]) => [part, one(name)])) }
      : cell,
}
