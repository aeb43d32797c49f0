/** Opens the list and moves the focus to it, or closes it where it was opened this way. Gives the element focused before. */
export function toggleKeys(list: HTMLDetailsElement, before: HTMLElement | undefined): HTMLElement | undefined {
  if (list.open && before) {
    list.open = false
    before.focus()
    return undefined
  }
  const focused = deepFocus()
  list.open = true
  const summary = list.querySelector('summary')
  summary?.focus({ preventScroll: true })
  list.scrollIntoView({ block: 'start' })
  return focused
}

function deepFocus(): HTMLElement {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at instanceof HTMLElement ? at : document.body
}
