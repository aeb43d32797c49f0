/** The words of results over a range. */
export const rangeWords = {
  title: (label: string): string => `Over a range of ${label}`,
  isNow: (label: string, value: string): string => `${label} is now ${value}.`,
  now: (value: string): string => `${value}, now`,
  use: 'Use',
  figures: 'Figures over both givens',
  useAValue: 'Select a value to use it.',
  notSaved: (reason: string): string => `The plot was not saved: ${reason}`,
}
