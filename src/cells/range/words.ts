import { overRange } from '../../worksheet/analysis/words.ts'

/** The words of results over a range. */
export const rangeWords = {
  title: overRange,
  isNow: (label: string, value: string): string => `${label} is now ${value}.`,
  now: (value: string): string => `${value}, now`,
  use: 'Use',
  figures: 'Figures over both givens',
  useAValue: 'Select a value to use it.',
  notSaved: (reason: string): string => `The plot was not saved: ${reason}`,
}
