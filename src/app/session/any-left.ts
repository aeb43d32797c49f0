/** What the texts left behind begin with, among the keys of the site’s local storage. */
export const LEFT = 'evenfield-left:'

/** Whether a page before this one has left something that was not saved. */
export function isAnyLeft(): boolean {
  try {
    return Object.keys(localStorage).some((key) => key.startsWith(LEFT))
  } catch {
    // A page whose site data is switched off has none.
    return false
  }
}
