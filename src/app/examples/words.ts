import { plural } from '../../units/plural.ts'
import { examplesText } from '../common/words.ts'

export const exampleWords = {
  stillExample: (n: number): string =>
    n === 1 ? '1 figure is still the example’s.' : `${plural(n, 'figure')} are still the example’s.`,
  restsOnExample: 'What rests on them is drawn with a dashed line.',
  inSection: examplesText,
  nextExample: 'Next one',
  useAll: 'Use all',
  exampleFigures: 'example figures',
  useAllAsk: (n: number): string => `Use ${n === 1 ? 'this example figure' : `all ${plural(n, 'example figure')}`}?`,
  useAllWhy: 'Your results and checks will then depend on them.',
  useThem: 'Use them',
  cancel: 'Cancel',
}
