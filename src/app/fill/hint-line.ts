import type { GivenCell } from '../../cells/basic/given-cell.ts'
import { labelOf } from '../../cells/shared/cell-view.ts'

/** Shows the hint of the focused or pointed given in the line under all givens of its section. */
export function showHint(event: Event): void {
  const given = event.composedPath().find((one): one is GivenCell => (one as Element).localName === 'given-cell')
  const line = (event.currentTarget as HTMLElement).querySelector('.hint-line')
  if (!given || !line) return
  const { cell } = given.view.get()
  const label = document.createElement('b')
  label.textContent = `${labelOf(cell)}.`
  line.replaceChildren(...(cell.hint ? [label, ` ${cell.hint}`] : []))
}
