import MiniSearch from 'minisearch'
import type { Callable, GuideText } from '../values/function-record.ts'

/** A function with what the guide says of it: all the words it can be found by. */
export interface FoundIn {
  readonly record: Pick<Callable, 'name' | 'parameters'>
  readonly text: Pick<GuideText, 'about' | 'also' | 'formula'>
}

/** Functions by words, the best first. */
export interface FunctionFinder {
  /** The names of the functions that have all the words, in any of their forms; where none has all, those that have some. */
  find(words: string): string[]
}

/** One form for both spellings of English and for singular and plural. */
const oneForm = (word: string): string =>
  word
    .toLowerCase()
    .replace(/grey/g, 'gray')
    .replace(/our(?=s?$)/, 'or')
    .replace(/(metre|fibre|centre)/g, (part) => `${part.slice(0, -2)}er`)
    .replace(/dioptre/g, 'diopter')
    .replace(/is(?=(?:e|er|ed|ers|es|ing|ation)$)/, 'iz')
    .replace(/ll(?=(?:ed|ing)$)/, 'l')
    .replace(/(?<=[^su])s$/, '')

const FIELDS = ['name', 'also', 'about', 'parameters', 'formula'] as const

/** Prepares a search over functions that knows synonyms and both spellings and tolerates slips. */
export function functionFinder(functions: readonly FoundIn[]): FunctionFinder {
  const search = new MiniSearch<Record<string, string>>({
    idField: 'id',
    fields: [...FIELDS],
    tokenize: (text) => text.split(/[^\p{L}\p{N}]+/u),
    processTerm: (term) => (/^(?:a|an|the|of|and|in|to|for|is|at|by|on|with)$/i.test(term) ? null : oneForm(term)),
    searchOptions: {
      boost: { name: 5, also: 4, about: 2 },
      prefix: (term) => term.length > 2,
      // One typing error in a word of five letters, two in one of eight or more.
      fuzzy: (term) => (term.length < 5 ? false : term.length < 8 ? 1 : 2),
      weights: { prefix: 0.5, fuzzy: 0.25 },
    },
  })
  search.addAll(
    functions.map(({ record, text }) => ({
      id: record.name,
      name: record.name.replaceAll('_', ' '),
      also: (text.also ?? []).join('; '),
      about: text.about,
      parameters: record.parameters.map(({ name, about }) => `${name.replaceAll('_', ' ')} ${about}`).join('; '),
      formula: text.formula,
    })),
  )
  return {
    find(words) {
      const all = search.search(words, { combineWith: 'AND' })
      const found = all.length > 0 ? all : search.search(words, { combineWith: 'OR' })
      const best = found[0]?.score ?? 0
      // What only resembles a word far down in a text is left out where something fits well.
      const names = found.filter(({ score }) => score >= best / 12).map(({ id }) => String(id))
      const own = words
        .trim()
        .toLowerCase()
        .replace(/[\s-]+/g, '_')
      return names.includes(own) ? [own, ...names.filter((name) => name !== own)] : names
    },
  }
}
