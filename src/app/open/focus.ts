/** Whether a key event belongs to a field that is being typed into. */
export function isField(event: Event): boolean {
  const target = event.composedPath()[0]
  return target instanceof HTMLElement && (target.matches('input, textarea, select') || target.isContentEditable)
}

/** The focused element, inside all shadow roots. */
export function focused(): Element | null {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at
}
