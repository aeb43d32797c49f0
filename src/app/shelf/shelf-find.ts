import type { Answer } from '../templates/templates.ts'

/** What one may have got, as it is asked on the shelf, and the words it is found by. */
export const ENTRIES: readonly (readonly [said: string, query: string])[] = [
  ['A flat sheet', 'flat sheet'],
  ['Framed or glazed', 'framed'],
  ['A bound volume', 'book'],
  ['Too big for one frame', 'too big'],
  ['Something small', 'small'],
  ['Slides or negatives', 'slides'],
  ['A list of originals', 'list'],
  ['Only a phone', 'phone'],
]

/** Words that say nothing of what is sought. */
const EMPTY_WORDS = new Set('a an and as at for from got have i in is it my of on or some the this to with'.split(' '))

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')

/** A word without the ending that makes it many, or a doing: `books`, `glazing`, `stitched`. */
const stem = (word: string): string =>
  word.length > 4 ? word.replace(/(ies|ing|es|ed|e|s|y)$/, '') : word.replace(/s$/, '')

/** Shorter stems would be found in everything. */
const SHORTEST = 3

function matches(sought: string, word: string): boolean {
  if (word.startsWith(sought)) return true
  const [a, b] = [stem(sought), stem(word)]
  return a.length >= SHORTEST && (a === b || word.startsWith(a))
}

export interface Found {
  readonly answers: readonly Answer[]
  /** Every word was met; else these meet the most of them, or there are none. */
  readonly whole: boolean
}

/** How many of the words a template meets: by what it is called and the words people use, and with its description. */
function meets({ answer, about, words }: Answer, sought: readonly string[]): { named: number; told: number } {
  const named = wordsOf([answer, ...words].join(' '))
  const told = [...named, ...wordsOf(about)]
  const count = (among: readonly string[]): number =>
    sought.filter((one) => among.some((word) => matches(one, word))).length
  return { named: count(named), told: count(told) }
}

/** The answers to words as people say them; all of them where nothing is sought. */
export function found(answers: readonly Answer[], query: string): Found {
  const sought = wordsOf(query).filter((word) => !EMPTY_WORDS.has(word))
  if (sought.length === 0) return { answers, whole: true }
  const met = answers.map((answer) => ({ answer, ...meets(answer, sought) }))
  const best = (by: 'named' | 'told', least: number): readonly Answer[] =>
    met.filter((one) => one[by] >= least).map(({ answer }) => answer)
  // What is only told of is shown where nothing is called so.
  for (const by of ['named', 'told'] as const) {
    const all = best(by, sought.length)
    if (all.length > 0) return { answers: all, whole: true }
  }
  const most = Math.max(...met.map(({ named }) => named))
  return { answers: most === 0 ? [] : best('named', most), whole: false }
}

/** Whether a kept sheet answers to what is sought. */
export const isTitled = (title: string, query: string): boolean => {
  const words = wordsOf(title)
  return wordsOf(query).every((one) => words.some((word) => matches(one, word)))
}
