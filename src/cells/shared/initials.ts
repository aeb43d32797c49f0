const KEY = 'evenfield-initials'
export const LONGEST_INITIALS = 12

/** The initials of who measures in this browser, saved with each measured value; empty where none are given. */
export function initials(): string {
  try {
    return localStorage.getItem(KEY) ?? ''
  } catch {
    return ''
  }
}

/** Saves the initials; without storage measured values are saved without them. */
export function setInitials(text: string): void {
  try {
    localStorage.setItem(KEY, text.trim().slice(0, LONGEST_INITIALS))
  } catch {
    // A page whose site data is switched off stores nothing.
  }
}
