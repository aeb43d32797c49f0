import { write } from './words.ts'

/** A change of text that would correct what a diagnostic reports. */
export interface Fix {
  /** What the button says: “Write 1/125 s”. */
  readonly label: string
  readonly from: number
  readonly to: number
  readonly insert: string
}

/** What is wrong (or doubtful) in a text, where, and how to correct it. */
export interface Diagnostic {
  readonly severity: 'error' | 'warning'
  /** A whole sentence: what was found and what is required. */
  readonly message: string
  /** The span in the text, in UTF-16 units. */
  readonly from: number
  readonly to: number
  readonly fixes: readonly Fix[]
}

/** A text with a fix applied. */
export const applyFix = (text: string, fix: Fix): string => text.slice(0, fix.from) + fix.insert + text.slice(fix.to)

/** An error in a text, from one character to another, with what would fix it. */
export const problem = (message: string, from: number, to: number, fixes: readonly Fix[] = []): Diagnostic => ({
  severity: 'error',
  message,
  from,
  to,
  fixes,
})

/** A doubt about a text that computes, with what would settle it. */
export const warning = (message: string, from: number, to: number, fixes: readonly Fix[] = []): Diagnostic => ({
  severity: 'warning',
  message,
  from,
  to,
  fixes,
})

/** What to write in place of some characters of a text. */
export const fix = (insert: string, from: number, to: number, label = write(insert.trim())): Fix => ({
  label,
  from,
  to,
  insert,
})
