import { focused } from '../../cells/shared/focus.ts'

/** Opens the list and moves the focus to it, or closes it where it was opened this way. Gives the element focused before. */
export function toggleKeys(list: HTMLDetailsElement, before: HTMLElement | undefined): HTMLElement | undefined {
  if (list.open && before) {
    list.open = false
    before.focus()
    return undefined
  }
  const at = focused()
  list.open = true
  const summary = list.querySelector('summary')
  summary?.focus({ preventScroll: true })
  list.scrollIntoView({ block: 'start' })
  return at instanceof HTMLElement ? at : document.body
}
