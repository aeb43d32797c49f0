import { count } from '../../units/plural.ts'
import { openedWords } from '../opened/words.ts'

/** The words of a list of steps. */
export const stepsWords = {
  noText: 'A step without text',
  noSteps: 'No steps yet',
  allDone: (n: number): string => (n === 1 ? 'Done' : `All ${count(n)} done`),
  done: (done: number, of: number): string => `${count(done)} of ${count(of)} done`,
  startOver: 'Start over',
  readingsRemain: 'The ticks are cleared; the readings are still there.',
  clearReadings: 'Clear the readings too',
  measured: openedWords.measured,
  computed: (value: string, difference: string, adjust?: string): string =>
    [
      difference === '' ? `computed ${value}` : `computed ${value}; measured ${difference}`,
      ...(adjust ? [adjust] : []),
    ].join('. '),
  notReadable: (label: string): string =>
    `“${label}” takes no reading. In Build, choose a given or a result for this step.`,
  missing: (name: string): string => `The reading “${name}” is no longer in the sheet. In Build, choose another.`,
}
