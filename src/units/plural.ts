import { grouped } from './figure.ts'

/** As the browser lists and counts in English, which takes as long to be got ready as much of what a page loads first. */
const listed = (names: readonly string[], word: 'and' | 'or'): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} ${word} ${names.at(-1)}`

/** A count in digits, grouped by thin spaces from five digits on, as all figures of the app are: `1200`, `12 000`. */
export const count = (n: number): string => grouped(String(n))

/** The form of a word that agrees with a count, without the count: `agree(1, 'fails', 'fail')` is `fails`. */
export const agree = (n: number, one: string, other: string): string => (Math.abs(n) === 1 ? one : other)

/** A count with its noun: `1 check`, `2 checks`. Nouns that do not take an s give their plural. */
export const plural = (n: number, one: string, other = `${one}s`): string => `${count(n)} ${agree(n, one, other)}`

/** Names in a sentence: `A`, `A and B`, `A, B and C`. */
export const listText = (names: readonly string[]): string => listed(names, 'and')

/** Names in a sentence, any of which will do: `A`, `A or B`, `A, B or C`. */
export const anyOf = (names: readonly string[]): string => listed(names, 'or')

/** Names in a sentence, of which only the first few are named: `A, B and 3 more`. */
export const shortList = (names: readonly string[], most = 3): string =>
  listText(names.length > most ? [...names.slice(0, most - 1), `${count(names.length - most + 1)} more`] : names)

/** The rest of a list that is cut short: `and 3 more`. */
export const andMore = (n: number): string => `and ${count(n)} more`

/** A day in a sentence: `4 March 2026`. */
export const day = (at: Date): string =>
  at.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })

/** The time of day: `10:42`. */
export const clock = (at: Date): string => at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })

/** A day and a time of day: `4 March 2026, 10:42`. */
export const dayAndTime = (at: Date): string => `${day(at)}, ${clock(at)}`
