import { agree, plural } from '../../units/plural.ts'
import { fineAdjustments, moreResults, WITH_EXAMPLE, waitingText, whatFollows } from '../common/words.ts'

export const fillWords = {
  youGive: 'You give',
  whatFollows,
  fineAdjustments,
  moreResults,
  checksPass: (n: number, inExample: boolean): string =>
    `${plural(n, 'check')} ${agree(n, 'passes', 'pass')}${inExample ? ` ${WITH_EXAMPLE}` : ''}`,
  sameError: (n: number): string => `${plural(n, 'more check')} ${agree(n, 'has', 'have')} the same error`,
  /** Followed by the figures, as links. */
  checksNeed: (checks: number, figures: number): string =>
    figures === 0
      ? waitingText(checks)
      : `${plural(checks, 'check')} ${agree(checks, 'needs', 'need')} ${plural(figures, 'figure')}`,
  again: (label: string): string => `${label} (measure again)`,
  emptyBefore: 'This sheet is empty.',
  emptyLink: 'Add your own cells in Build',
  emptyAfter: ', or add a section for a part of the job.',
}
