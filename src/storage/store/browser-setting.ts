/** What this browser remembers under a key; undefined where it remembers nothing, or may not. */
export function browserSetting(key: string): string | undefined {
  try {
    return localStorage.getItem(key) ?? undefined
  } catch {
    return undefined
  }
}

/** Has this browser remember a text; where it may not, the text lasts for this visit at most. */
export function rememberSetting(key: string, value: string): void {
  try {
    localStorage.setItem(key, value)
  } catch {
    // A page whose site data is switched off stores nothing.
  }
}
