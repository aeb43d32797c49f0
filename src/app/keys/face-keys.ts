import { focusPath } from '../../cells/shared/focus.ts'
import { type Face, withFace } from '../common/route.ts'
import type { OpenSheet } from '../open/open-sheet.ts'

/** With Shift and Alt, the keys that turn to a face. */
const FACES: Readonly<Record<string, Face>> = { KeyF: 'fill', KeyS: 'stand', KeyB: 'build' }

/** Turns to the face of a key, and gives the cell that has the focus in this one, which it turns to there. */
export function turn(code: string, from: Face, open: OpenSheet): string | undefined {
  const face = FACES[code] ?? from
  if (face === from) return undefined
  const { cells } = open.sheet
  const near = from === 'build' ? cells.at(-1) : cells[0]
  const cell = face === 'stand' ? undefined : (focusedCell() ?? near?.id)
  location.hash = withFace(location.hash, face)
  return cell
}

/** The cell whose element has the focus, inside all shadow roots. */
function focusedCell(): string | undefined {
  return focusPath().flatMap((one) => one.closest<HTMLElement>('[data-cell]')?.dataset.cell ?? [])[0]
}
