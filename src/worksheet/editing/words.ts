import { agree, count, shortList } from '../../units/plural.ts'

/** The words about measured values that are older than what they depend on. */
export const outdatedWords = {
  readAgain: (labels: readonly string[]): string =>
    `needs ${shortList(labels)} to be measured again: what ${agree(labels.length, 'it depends', 'they depend')} on has changed since.`,
}

export const textTooLong = (length: number, most: number): string =>
  `This text has ${count(length)} characters, and at most ${count(most)} fit. Nothing was changed: shorten it, or split it.`
export const tooMany = (length: number, key: string, most: number): string =>
  `There would be ${count(length)} ${key}, and at most ${count(most)} fit. Nothing was changed.`
