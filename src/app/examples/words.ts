import { countedText, examplesText } from '../common/words.ts'

const examples = (figures: number, tables = 0): string => countedText(figures, tables, 'example ')

export const exampleWords = {
  stillExample: (figures: number, tables = 0): string => `${examplesText(figures, tables)}.`,
  restsOnExample: 'What depends on one has a dashed line.',
  /** Beside a heading, whose description needs the room. */
  inSection: examples,
  nextExample: 'Next one',
  useAll: 'Use all',
  exampleFigures: 'example figures',
  useAllAsk: (figures: number, tables = 0): string => {
    if (figures + tables === 1) return figures === 1 ? 'Use this example figure?' : 'Use this example table?'
    return `Use ${figures > 0 && tables > 0 ? '' : 'all '}${examples(figures, tables)}?`
  },
  useAllWhy: 'Your results and checks will then depend on them.',
  useThem: 'Use them',
  cancel: 'Cancel',
}
