/** The focused element, inside all shadow roots. */
export function focused(): Element | null {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at
}
