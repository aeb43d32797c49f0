/** A change of text that would mend what a diagnostic complains of. */
export interface Mend {
  /** What the button says: «Write 1/125 s». */
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
  readonly found?: string
  readonly wanted?: string
  readonly mends: readonly Mend[]
}

export const applyMend = (text: string, mend: Mend): string =>
  text.slice(0, mend.from) + mend.insert + text.slice(mend.to)
