import type { GivenCell } from '../../cells/basic/given-cell.ts'
import { basicWords } from '../../cells/basic/words.ts'
import { labelOf } from '../../cells/shared/cell-view.ts'
import { originOf } from '../../cells/shared/given-origin.ts'
import { hintWords } from './words.ts'

/**
 * Shows the hint of the focused or pointed given in the line under all givens of its section, with a button that takes
 * an example's figure until another is typed. A pointer that passes other rows on its way to that button does not change the line.
 */
export function showHint(event: Event): void {
  const gives = event.currentTarget as HTMLElement
  const given = event.composedPath().find((one): one is GivenCell => (one as Element).localName === 'given-cell')
  const line = gives.querySelector('.hint-line')
  if (!given || !line || (event.type === 'pointerover' && gives.matches(':focus-within'))) return
  const { cell, outcome } = given.view.get()
  const label = document.createElement('b')
  label.textContent = `${labelOf(cell)}.`
  // Screen readers have the hint from the field.
  const hint = document.createElement('span')
  hint.ariaHidden = 'true'
  hint.append(label, ` ${cell.hint ?? ''} `)
  if (originOf(cell) !== 'example' || outcome.state !== 'value') {
    line.replaceChildren(...(cell.hint ? [hint] : []))
    return
  }
  const button = document.createElement('button')
  button.type = 'button'
  button.className = 'word'
  button.tabIndex = -1
  button.textContent = basicWords.use(outcome.shown.text)
  button.addEventListener('pointerdown', (pressed) => pressed.preventDefault())
  button.addEventListener('click', () => given.use())
  line.replaceChildren(hint, button, ` ${hintWords.enterKey}`)
}
