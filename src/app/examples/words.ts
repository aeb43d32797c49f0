import { plural } from '../../units/plural.ts'

const examples = (n: number): string => plural(n, 'example figure')

export const exampleWords = {
  stillExample: (n: number): string =>
    n === 1 ? '1 figure is still the example’s.' : `${plural(n, 'figure')} are still the example’s.`,
  restsOnExample: 'What rests on them is drawn with a dashed line.',
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
