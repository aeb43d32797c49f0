import type * as v from 'valibot'
import { clip } from '../../units/index.ts'
import * as words from './words.ts'

/** What a value of JSON is called; of several that would do, each. */
function called(text: string): string {
  const among = text.replace(/^\((.*)\)$/, '$1').split(' | ')
  const names = among.map(
    (one) => words.KINDS_OF_JSON[one] ?? one.replace(/^<=/, words.AT_MOST).replace(/^>=/, words.AT_LEAST),
  )
  return names.length > 1 ? words.oneOf(names) : (names[0] as string)
}

/** What is wrong with a value in a file, as a whole sentence: the library’s own words are for developers. */
export function issueText({ message, type, expected, received }: v.BaseIssue<unknown>): string {
  // A sentence of ours is given with the rule itself.
  if (!message.startsWith('Invalid')) return message
  if (received === 'undefined') return words.missing
  const wanted = words.BY_RULE[type] ?? called(expected ?? '')
  return words.mustBe(type.endsWith('length') ? words.aLength(wanted) : wanted, clip(called(received)))
}
