import { KIND_TITLES } from '../format/words.ts'
import type { Frame } from '../schema/document.ts'
import { type CellKind, mapValues } from './kind.ts'
import { renamedReading } from './reading.ts'

export const FRAME: CellKind<Frame> = {
  title: KIND_TITLES.frame,
  computed: 'given',
  fresh: ({ id, freeName }) => ({ kind: 'frame', id, name: freeName('frame') }),
  sets: ({ fills = {} }) => Object.values(fills),
  listed: ({ read_under = [] }) => read_under,
  renamed: (cell, { one }) => ({
    ...cell,
    ...(cell.fills ? { fills: mapValues(cell.fills, one) } : {}),
    ...renamedReading(cell, one),
  }),
}
