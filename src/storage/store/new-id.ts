/** A fresh random id, for a sheet or one state of it. */
export function newId(): string {
  // randomUUID is missing on a page served without https from another machine.
  const bytes = crypto.getRandomValues(new Uint8Array(12))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
