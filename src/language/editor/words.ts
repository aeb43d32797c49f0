/** What completion says of the words of the language. */
export const completionWords = {
  when: 'when(condition, then, otherwise)',
  and: 'both are true',
  or: 'one or both are true',
  not: 'the opposite',
} as const
