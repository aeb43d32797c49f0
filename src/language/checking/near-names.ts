import { nearest } from '../../units/index.ts'
import type { Library } from '../values/function-record.ts'

/** The nearest function of a library to each word looked for, since one mistake is looked at many times while it is typed. */
const known = new WeakMap<Library, Map<string, string | undefined>>()

/** The function whose name is nearest to a word that is none, if one is near enough to be meant. */
export function nearestFunction(library: Library, word: string): string | undefined {
  const found = known.get(library) ?? new Map<string, string | undefined>()
  known.set(library, found)
  if (!found.has(word)) found.set(word, nearest(word, [...library.keys(), 'when']))
  return found.get(word)
}
