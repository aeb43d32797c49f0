/** Whether what is typed here is the field's own. */
export function isField(event: Event): boolean {
  const target = event.composedPath()[0]
  return target instanceof HTMLElement && (target.matches('input, textarea, select') || target.isContentEditable)
}
