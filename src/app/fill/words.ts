import { agree, plural } from '../../units/plural.ts'

export const fillWords = {
  youGive: 'You give',
  whatFollows: 'What follows',
  fineAdjustments: 'Fine adjustments',
  moreResults: 'More results',
  checksPass: (n: number, inExample: boolean): string =>
    `${plural(n, 'check')} ${agree(n, 'passes', 'pass')}${inExample ? ' with the example’s figures' : ''}`,
  /** Followed by the figures, as links. */
  checksNeed: (checks: number, figures: number): string =>
    figures === 0
      ? `${plural(checks, 'check')} ${agree(checks, 'needs', 'need')} more figures`
      : `${plural(checks, 'check')} ${agree(checks, 'needs', 'need')} ${plural(figures, 'figure')}`,
  emptyBefore: 'This sheet is empty.',
  emptyLink: 'Add your own cells in Build',
  emptyAfter: ', or add a section for a part of the job.',
}
