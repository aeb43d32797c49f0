/** The words of the line above the keyboard. */
export const typingWords = {
  whatFollows: 'What follows',
  waysToFix: 'Fix',
  letters: 'All keys',
}
