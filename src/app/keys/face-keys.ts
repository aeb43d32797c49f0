import type { Face } from '../common/route.ts'
import type { OpenSheet } from '../open/open-sheet.ts'

/** With Shift and Alt, the keys that turn to a face. */
const FACES: Readonly<Record<string, Face>> = { KeyF: 'fill', KeyS: 'stand', KeyB: 'build' }

/** The face a key turns to, and the cell that has the focus in this one, which it turns to there. */
export function turned(code: string, from: Face, open: OpenSheet): { face: Face; cell: string | undefined } {
  const { cells } = open.sheet
  const near = from === 'build' ? cells.at(-1) : cells[0]
  const face = FACES[code] ?? from
  return { face, cell: face === 'stand' || face === from ? undefined : (focusedCell() ?? near?.id) }
}

/** The cell whose element has the focus, inside all shadow roots. */
function focusedCell(): string | undefined {
  for (let at = document.activeElement; at; at = at.shadowRoot?.activeElement ?? null) {
    const id = at.closest<HTMLElement>('[data-cell]')?.dataset.cell
    if (id !== undefined) return id
  }
  return undefined
}
