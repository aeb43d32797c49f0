/** Whether nothing on the page has the focus, because its element was removed. */
const isLost = (): boolean => document.activeElement === null || document.activeElement === document.body

function focusOn(element: HTMLElement): boolean {
  element.focus()
  if (isLost()) element.shadowRoot?.querySelector<HTMLElement>('button, a, input, select, textarea')?.focus()
  return !isLost()
}

/** Where a change removed the focused cell, the focus goes to the one after it that is still there, or else before it. */
export function keepFocus(held: Element, before: readonly HTMLElement[]): void {
  if (!isLost()) return
  const at = before.indexOf(held as HTMLElement)
  const near = [...before.slice(at + 1), ...before.slice(0, Math.max(at, 0)).reverse()]
  for (const one of near) if (one.isConnected && focusOn(one)) return
}
