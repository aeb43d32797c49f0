import { agree, plural } from '../../units/plural.ts'

export const fillWords = {
  youGive: 'You give',
  whatFollows: 'What follows',
  fineAdjustments: 'Fine adjustments',
  moreResults: 'More results',
  checksPass: (n: number): string => `${plural(n, 'check')} ${agree(n, 'passes', 'pass')}`,
  /** Followed by the figures, as links. */
  checksNeed: (checks: number, figures: number): string =>
    figures === 0
      ? `${plural(checks, 'check')} ${agree(checks, 'needs', 'need')} more figures`
      : `${plural(checks, 'check')} ${agree(checks, 'needs', 'need')} ${plural(figures, 'figure')}`,
  stillExample: (n: number): string =>
    n === 1 ? '1 figure is still the example’s.' : `${plural(n, 'figure')} are still the example’s.`,
  restsOnExample: 'What rests on them is only an example too.',
  nextExample: 'Next one',
  useAll: 'Use all example figures',
  useAllAsk: (n: number): string => `Use ${n === 1 ? 'this example figure' : `all ${plural(n, 'example figure')}`}?`,
  useAllWhy: 'Your results and checks will then rest on them.',
  useThem: 'Use them',
  cancel: 'Cancel',
  emptyBefore: 'This sheet is empty.',
  emptyLink: 'Add your own cells in Build',
  emptyAfter: ', or add a section for a part of the job.',
}
