import { shortList } from '../../units/plural.ts'

/** The words about measured values that are older than what they depend on. */
export const outdatedWords = {
  readAgain: (labels: readonly string[]): string =>
    `for ${shortList(labels)} to be measured again: what ${labels.length === 1 ? 'it depends' : 'they depend'} on changed since.`,
}
