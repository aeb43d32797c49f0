const isChoice = (target: EventTarget | undefined): boolean =>
  target instanceof HTMLSelectElement ||
  target instanceof HTMLOptionElement ||
  (target instanceof HTMLInputElement && /^(checkbox|radio|date)$/.test(target.type))

/** Keys that go from field to field, and leave. */
const isOnTheMove = ({ key }: KeyboardEvent): boolean => key === 'Tab' || key === 'Escape'

/** Stops what would change a field, so that fields show what the sheet holds; reading, marking and copying go on. */
function hold(event: Event): void {
  const target = event.composedPath()[0]
  const typing = event.type === 'beforeinput' || event.type === 'drop' || event.type === 'paste'
  const choosing = isChoice(target) && !(event instanceof KeyboardEvent && isOnTheMove(event))
  if (typing || choosing) event.preventDefault()
}

const OF_THE_SHEET = new Set(['sheet-head', 'fill-face', 'stand-view', 'build-face'])

const isInSheet = (event: Event): boolean =>
  event.composedPath().some((one) => one instanceof HTMLElement && OF_THE_SHEET.has(one.localName))

const EVENTS = ['beforeinput', 'paste', 'drop', 'mousedown', 'click', 'keydown'] as const

/** Holds every field of the sheet below an element still while `isFrozen` says so. */
export function readOnly(element: HTMLElement, isFrozen: () => boolean): void {
  for (const name of EVENTS)
    element.addEventListener(name, (event) => isFrozen() && isInSheet(event) && hold(event), { capture: true })
}
