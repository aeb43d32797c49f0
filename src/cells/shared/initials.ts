import { signal } from '@lit-labs/signals'

const KEY = 'evenfield-initials'
export const LONGEST_INITIALS = 12

function stored(): string {
  try {
    return (localStorage.getItem(KEY) ?? '').slice(0, LONGEST_INITIALS)
  } catch {
    return ''
  }
}

/** The initials of who measures in this browser, saved with each measured value; empty where none are given. */
export const initials = signal(stored())

export function setInitials(text: string): void {
  const value = text.trim().slice(0, LONGEST_INITIALS)
  initials.set(value)
  try {
    localStorage.setItem(KEY, value)
  } catch {
    // Without storage they last for this visit.
  }
}
