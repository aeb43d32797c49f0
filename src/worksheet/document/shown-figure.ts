import { asSet, type Setting, type Shown } from '../../units/index.ts'
import type { Cell } from '../schema/document.ts'

/** A figure as its cell shows it: what is set on the equipment as its mark, anything else as it is, beside another mark near it. */
export function shownFigure(cell: Cell, shown: Shown): Setting {
  const set: Setting = cell.kind === 'result' && cell.stand ? asSet(shown) : shown
  const { mark, ...rest } = set
  return mark === set.text ? rest : set
}
