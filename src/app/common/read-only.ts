const isChoice = (target: EventTarget | undefined): boolean =>
  target instanceof HTMLSelectElement ||
  target instanceof HTMLOptionElement ||
  (target instanceof HTMLInputElement && /^(checkbox|radio|date)$/.test(target.type))

/** Keys that move between fields or leave one. */
const isNavigation = ({ key }: KeyboardEvent): boolean => key === 'Tab' || key === 'Escape'

/** Cancels events that would change a field; reading, selecting and copying still work. */
function cancelEdit(event: Event): void {
  const target = event.composedPath()[0]
  const typing = event.type === 'beforeinput' || event.type === 'drop' || event.type === 'paste'
  const choosing = isChoice(target) && !(event instanceof KeyboardEvent && isNavigation(event))
  if (typing || choosing) event.preventDefault()
}

const OF_THE_SHEET = new Set(['sheet-head', 'fill-face', 'stand-view', 'build-face'])

const isInSheet = (event: Event): boolean =>
  event.composedPath().some((one) => one instanceof HTMLElement && OF_THE_SHEET.has(one.localName))

const EVENTS = ['beforeinput', 'paste', 'drop', 'mousedown', 'click', 'keydown'] as const

/** Makes every field of the sheet inside an element read only while `isFrozen` gives true. */
export function readOnly(element: HTMLElement, isFrozen: () => boolean): void {
  for (const name of EVENTS)
    element.addEventListener(name, (event) => isFrozen() && isInSheet(event) && cancelEdit(event), { capture: true })
}
