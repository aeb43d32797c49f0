import type { Summary } from '../../storage/store/types.ts'
import type { ShelfEntry } from '../templates/templates.ts'

/** Words that do not narrow a search. */
const EMPTY_WORDS = new Set('a an and as at for from got have i in is it my of on or some the this to with'.split(' '))

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')

/** A word without its plural or verb ending: `books`, `glazing`, `stitched`. */
const stem = (word: string): string =>
  word.length > 4 ? word.replace(/(ies|ing|es|ed|e|s|y)$/, '') : word.replace(/s$/, '')

/** Shorter stems would match almost every word. */
const SHORTEST = 3

function matches(query: string, word: string): boolean {
  if (word.startsWith(query)) return true
  const [a, b] = [stem(query), stem(word)]
  return a.length >= SHORTEST && (a === b || word.startsWith(a))
}

export interface Found<E extends ShelfEntry = ShelfEntry> {
  readonly entries: readonly E[]
  /** Whether every word matched; otherwise these match the most words, or there are none. */
  readonly whole: boolean
}

/** How many of the words match a template: by its title and search words, and with its description too. */
function meets({ answer, about, words }: ShelfEntry, query: readonly string[]): { named: number; described: number } {
  const named = wordsOf([answer, ...words].join(' '))
  const described = [...named, ...wordsOf(about)]
  const count = (among: readonly string[]): number =>
    query.filter((one) => among.some((word) => matches(one, word))).length
  return { named: count(named), described: count(described) }
}

/** The templates that match a query; all of them where it is empty. */
export function found<E extends ShelfEntry>(all: readonly E[], query: string): Found<E> {
  const words = wordsOf(query).filter((word) => !EMPTY_WORDS.has(word))
  // A figure does not narrow a search for the word beside it: `45 MP`, `35 mm slides`.
  const named = words.filter((word) => !/^\d+$/.test(word))
  const terms = named.length > 0 ? named : words
  if (terms.length === 0) return { entries: all, whole: true }
  const met = all.map((entry) => ({ entry, ...meets(entry, terms) }))
  const best = (by: 'named' | 'described', least: number): readonly E[] =>
    met.filter((one) => one[by] >= least).map(({ entry }) => entry)
  // Matches in descriptions are shown only where no title or search word matches.
  for (const by of ['named', 'described'] as const) {
    const entries = best(by, terms.length)
    if (entries.length > 0) return { entries, whole: true }
  }
  const most = Math.max(...met.map(({ named }) => named))
  return { entries: most === 0 ? [] : best('named', most), whole: false }
}

/** Whether job, title or size of a saved sheet match a query. */
export const isNamedSo = (
  { job = '', title, of = '' }: Pick<Summary, 'job' | 'title' | 'of'>,
  query: string,
): boolean => {
  const words = wordsOf(`${job} ${title} ${of}`)
  return wordsOf(query).every((one) => words.some((word) => matches(one, word)))
}
