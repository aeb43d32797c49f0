import { asSet, type Setting, type Shown } from '../../units/index.ts'
import type { Cell } from '../schema/document.ts'

/** A figure as its cell shows it: what is set on the equipment as its mark, anything else as it is. */
export const shownFigure = (cell: Cell, shown: Shown): Setting =>
  cell.kind === 'result' && cell.stand ? asSet(shown) : shown
