import { plural } from '../../units/plural.ts'
import { examplesText } from '../common/words.ts'

const examples = (n: number): string => plural(n, 'example figure')

export const exampleWords = {
  stillExample: (n: number): string => `${examplesText(n)}.`,
  restsOnExample: 'What depends on one has a dashed line.',
  /** Beside a heading, whose description needs the room. */
  inSection: examples,
  nextExample: 'Next one',
  useAll: 'Use all',
  exampleFigures: 'example figures',
  useAllAsk: (n: number): string => `Use ${n === 1 ? 'this example figure' : `all ${examples(n)}`}?`,
  useAllWhy: 'Your results and checks will then depend on them.',
  useThem: 'Use them',
  cancel: 'Cancel',
}
