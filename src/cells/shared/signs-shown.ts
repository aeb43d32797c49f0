import { signal } from '@lit-labs/signals'

const KEY = 'evenfield-signs'

const initiallyShown = (): boolean => {
  try {
    const stored = localStorage.getItem(KEY)
    if (stored !== null) return stored === 'yes'
  } catch {
    // Without storage the default applies.
  }
  return globalThis.matchMedia?.('(pointer: coarse)').matches === true
}

/** Whether a line with signs is shown while one types; by default only on touch screens. */
export const signsShown = signal(initiallyShown())

export function showSigns(show: boolean): void {
  signsShown.set(show)
  try {
    localStorage.setItem(KEY, show ? 'yes' : 'no')
  } catch {
    // Without storage the choice lasts for this visit.
  }
}

/** Whether the full keyboard is asked for, where figures otherwise get the keys for numbers. */
export const fullKeyboard = signal(false)
