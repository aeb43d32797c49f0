import { whatFollows } from '../common/words.ts'

/** The words of the line above the keyboard. */
export const typingWords = {
  whatFollows,
  waysToFix: 'Fix',
  letters: 'All keys',
}
