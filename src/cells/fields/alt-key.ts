/**
 * Whether a key event is Alt with a letter, and no other modifier than the given one. With Option a Mac types another
 * character in place of the letter, so the physical key counts where the character is no plain letter.
 */
export function isAltLetter(event: KeyboardEvent, letter: string, shift = false): boolean {
  if (!event.altKey || event.ctrlKey || event.metaKey || event.shiftKey !== shift) return false
  const key = event.key.toLowerCase()
  return key === letter || (!/^[a-z]$/.test(key) && event.code === `Key${letter.toUpperCase()}`)
}
