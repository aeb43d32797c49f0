/** Whether a key event belongs to a field that is being typed into. */
export function isField(event: Event): boolean {
  const target = event.composedPath()[0]
  return target instanceof HTMLElement && (target.matches('input, textarea, select') || target.isContentEditable)
}

/** The elements that have the focus, each in the shadow root of the one before. */
export function focusPath(): Element[] {
  const path: Element[] = []
  for (let at = document.activeElement; at; at = at.shadowRoot?.activeElement ?? null) path.push(at)
  return path
}

/** The focused element, inside all shadow roots. */
export const focused = (): Element | null => focusPath().at(-1) ?? null
