/** Whether nothing on the page has the focus, because its element was removed. */
const isLost = (): boolean => document.activeElement === null || document.activeElement === document.body

const drawn = (): Promise<unknown> => new Promise(requestAnimationFrame)

function focusOn(element: HTMLElement): boolean {
  element.focus()
  if (isLost()) element.shadowRoot?.querySelector<HTMLElement>('button, a, input, select, textarea, summary')?.focus()
  return !isLost()
}

/** An element without a control takes the focus itself; its tab stop would skip what comes to be in it. */
function focusOnItself(element: HTMLElement): void {
  if (focusOn(element)) return
  element.tabIndex = -1
  element.focus({ preventScroll: true })
}

/**
 * Where a change removed what had the focus, the focus goes to what it was in, from the innermost that is still there and
 * within a face; else to the cell after it, or before it. `held` are the elements that had it, `before` all cells.
 */
export async function keepFocus(held: readonly Element[], before: readonly HTMLElement[]): Promise<void> {
  const face = held.findIndex(({ localName }) => localName.endsWith('-face'))
  await drawn()
  if (face < 0 || !isLost()) return
  const within = held.slice(face + 1) as HTMLElement[]
  const inner = within.findLast(({ isConnected, localName }) => isConnected && localName.includes('-'))
  if (inner) {
    focusOnItself(inner)
    return
  }
  const at = before.findIndex((one) => within.includes(one))
  const near = [...before.slice(at + 1), ...before.slice(0, Math.max(at, 0)).reverse()]
  for (const one of near) if (one.isConnected && focusOn(one)) return
}

/** Where another face has taken the place of what had the focus, it begins at the top of that. */
export async function beginAt(main: HTMLElement | null): Promise<void> {
  await drawn()
  if (isLost() && main) focusOnItself(main)
}
