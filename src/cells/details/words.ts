import { andMore, shortList } from '../../units/plural.ts'

/** The words of an unfolded result and of suggestions. */
export const detailsWords = {
  limits: (low: string, high: string, likely: string): string =>
    `At worst from ${low} to ${high}; likely within ${likely} either way.`,
  contributions: (list: string): string => `Contributions: ${list}.`,
  contribution: (label: string, amount: string): string => `${label} ${amount}`,
  nonlinear: 'Within these limits the result is not linear, so the likely range is only a rough figure.',
  read: (reading: string): string => `This value was ${reading}.`,
  usedBy: 'Used by',
  targetValue: 'Target value',
  addsSection: 'This adds a section.',
  /** The state of a check that is computed from an example's figures. */
  inExample: (state: string): string => `${state} (with the example’s figures)`,
  makeASize: 'Make it a size',
  increaseMargin: 'Increase margin',
  moreRows: andMore,
  measured: (value: string, difference: string, adjust?: string): string =>
    [difference === '' ? `measured ${value}` : `measured ${value}, ${difference}`, ...(adjust ? [adjust] : [])].join(
      '. ',
    ),
  /** A measured value is older than a change of what it depends on. */
  measuredBefore: (labels: readonly string[], read = 'measured'): string =>
    `${read} before ${shortList(labels)} changed`,
  confirm: 'Still correct',
  confirmThis: (label: string): string => `Still correct: ${label}`,
  initials: 'Your initials (optional)',
  clear: 'Clear',
  measuredValue: 'Later results use the measured value until you clear it.',
  notOverLimits: (names: readonly string[]): string =>
    `Passes with these figures, but not everywhere within the limits of ${shortList(names)}.`,
}
