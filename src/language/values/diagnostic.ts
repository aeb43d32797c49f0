/** A change of text that would mend what a diagnostic complains of. */
export interface Fix {
  /** What the button says: “Write 1/125 s”. */
  readonly label: string
  readonly from: number
  readonly to: number
  readonly insert: string
}

/** What is wrong (or doubtful) in a text, where, and how to mend it. */
export interface Diagnostic {
  readonly severity: 'error' | 'warning'
  /** A whole sentence: what was found and what was wanted. */
  readonly message: string
  /** The span in the text, in UTF-16 units. */
  readonly from: number
  readonly to: number
  readonly fixes: readonly Fix[]
}

export const applyFix = (text: string, mend: Fix): string =>
  text.slice(0, mend.from) + mend.insert + text.slice(mend.to)

export const problem = (message: string, from: number, to: number, fixes: readonly Fix[] = []): Diagnostic => ({
  severity: 'error',
  message,
  from,
  to,
  fixes,
})

export const warning = (message: string, from: number, to: number, fixes: readonly Fix[] = []): Diagnostic => ({
  severity: 'warning',
  message,
  from,
  to,
  fixes,
})

export const fix = (insert: string, from: number, to: number, label = `Write ${insert.trim()}`): Fix => ({
  label,
  from,
  to,
  insert,
})
