/** Whether a key event belongs to a field that is being typed into. */
export function isField(event: Event): boolean {
  const target = event.composedPath()[0]
  return target instanceof HTMLElement && (target.matches('input, textarea, select') || target.isContentEditable)
}
