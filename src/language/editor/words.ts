/** What completion says of the words of the language. */
export const completionWords = {
  when: 'when(condition, then, otherwise)',
  and: 'both are true',
  or: 'one or both are true',
  not: 'the opposite',
  /** In place of the kind of a cell that has an error. */
  inError: 'in error',
} as const

/** What to know of a unit that other trades define otherwise, by its symbol. */
export const unitNotes: Readonly<Record<string, string>> = {
  pt: '1/72 in, the point of desktop publishing; the traditional printer’s point is 0.4 % smaller',
  mil: '1/1000 in, not a millimetre',
  fc: '1 lm/ft²',
  fL: '1/π cd/ft²',
}
