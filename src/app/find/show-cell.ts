import type { LitElement } from 'lit'
import type { OpenSheet } from '../open/open-sheet.ts'
import { type Section, sectionsOf } from '../open/sections.ts'

/** A face that shows cells in bands, all of them. */
interface FaceOfBands extends LitElement {
  readonly open: OpenSheet
}

/** A list of checks, which are folded in it. */
interface FoldedChecks extends Element {
  reveal(id: string): Promise<HTMLElement | undefined>
}

/** Unfolds a cell and brings it into view; moves the focus to it, or only marks it as found where that is asked for. */
export async function showCell(
  face: FaceOfBands,
  id: string,
  markFound?: (root: ShadowRoot, cell: HTMLElement) => void,
): Promise<void> {
  const { open } = face
  const section = sectionsOf(open.sheet.cells).find((one) => contains(one, id))
  const isItsHeading = section?.id === id && markFound !== undefined
  if (section?.heading && !isItsHeading && open.isFolded(section.heading)) {
    open.fold(section.id, false)
    await face.updateComplete
  }
  const cell = await reveal(face.renderRoot, id)
  if (!cell) return
  // A cell of the whole width arrives after the others.
  if (cell.localName.includes('-')) await customElements.whenDefined(cell.localName)
  await (cell as LitElement).updateComplete
  cell.scrollIntoView({ block: cell.classList.contains('fold') ? 'start' : 'center' })
  if (markFound) markFound(cell.getRootNode() as ShadowRoot, cell)
  else focusOn(cell)
}

/** The element of a cell, in any fold or list. */
async function reveal(root: ParentNode, id: string): Promise<HTMLElement | undefined> {
  const cell = root.querySelector<HTMLElement>(`[data-cell="${CSS.escape(id)}"]`)
  if (!cell) {
    for (const list of root.querySelectorAll<FoldedChecks>('check-list')) {
      const check = await list.reveal(id)
      if (check) return check
    }
    return undefined
  }
  const folded = cell.closest('details')
  if (folded) folded.open = true
  return cell
}

/** Focuses a cell’s first control; a cell without one, itself. Its element has no tab stop, which would skip what is in it. */
function focusOn(cell: HTMLElement): void {
  cell.focus({ preventScroll: true })
  if (cell.matches(':focus-within')) return
  const first = cell.shadowRoot?.querySelector<HTMLElement>('button, a, input, select, textarea, summary, [tabindex]')
  if (!first) cell.tabIndex = -1
  const on = first ?? cell
  on.focus({ preventScroll: true })
}

const contains = ({ id, rows, exact, drawings }: Section, cell: string): boolean =>
  id === cell || [...rows, ...exact, ...drawings].some((one) => one.id === cell)
