import type { CheckState } from '../../cells/shared/check-sign.ts'
import type { CheckCounts } from '../../storage/store/types.ts'
import { agree, clock, count, day, plural } from '../../units/plural.ts'
import type { Stage } from '../../worksheet/format/format.ts'
import type { CheckSummary } from '../../worksheet/index.ts'
import { stateCounts } from './state-counts.ts'

export const UNTITLED_SECTION = 'Untitled section'

/** The headings of the shelf by stage of the job, in the order of work. */
export const MOMENTS: readonly (readonly [Stage, string])[] = [
  ['receive', 'Receive and quote'],
  ['frame', 'Frame'],
  ['light', 'Light'],
  ['sharp', 'Square and sharp'],
  ['accept', 'Expose and accept'],
  ['deliver', 'Run and deliver'],
]

/** The sentence on the checks in a state; those that pass are counted once there are no others. */
const STATE_SENTENCES: Readonly<Record<CheckState, (n: number) => string>> = {
  error: (n) => `${plural(n, 'cell')} ${agree(n, 'has an error', 'have errors')}.`,
  fail: (n) => `${plural(n, 'check')} ${agree(n, 'fails', 'fail')}.`,
  marginal: (n) => `${plural(n, 'check')} ${agree(n, 'is', 'are')} marginal.`,
  waiting: (n) => `${waitingText(n)}.`,
  pass: () => '',
}

/** The state of all checks in sentences, the worst first. */
export function checkSummaryText(summary: CheckSummary): string {
  const { pass } = summary
  const sentences = stateCounts(summary)
    .map(([state, n]) => STATE_SENTENCES[state](n))
    .filter(Boolean)
  if (sentences.length > 0) return sentences.join(' ')
  if (pass === 1) return 'The check passes.'
  return pass === 0 ? 'No checks yet.' : `All ${count(pass)} checks pass.`
}

/** How many cells are in a state: `1 fail`, `9 waiting`. */
export const stateText = (state: CheckState, n: number): string =>
  state === 'error' ? plural(n, 'error') : `${count(n)} ${state}`

/** How many checks are in each state there is, the worst first: `1 fail`, `9 pass`. */
export const stateTexts = (counts: CheckCounts): readonly string[] =>
  stateCounts(counts).map(([state, n]) => stateText(state, n))

/** After what is computed from an example's figures. */
export const WITH_EXAMPLE = 'with the example’s figures'

/** `2 figures and 1 table`, each after a word where there is one. */
export const countedText = (figures: number, tables = 0, before = ''): string =>
  [
    ...(figures > 0 || tables === 0 ? [plural(figures, `${before}figure`)] : []),
    ...(tables > 0 ? [plural(tables, `${before}table`)] : []),
  ].join(' and ')

/** How many figures, and how many tables, are not yet the user’s own: `2 figures are still the example’s`. */
export const examplesText = (figures: number, tables = 0): string =>
  `${countedText(figures, tables)} ${agree(figures + tables, 'is', 'are')} still the example’s`

/** How many checks wait: `2 checks need more figures`. */
export const waitingText = (n: number): string => `${plural(n, 'check')} ${agree(n, 'needs', 'need')} more figures`

export const cellsText = (n: number): string => plural(n, 'cell')

const sameDay = (a: Date, b: Date): boolean => a.toDateString() === b.toDateString()

/** When something was saved: `today 10:42`, `yesterday 09:05`, `3 October 2026`. */
export function when(at: Date, now = new Date()): string {
  const yesterday = new Date(now)
  yesterday.setDate(now.getDate() - 1)
  if (sameDay(at, now)) return `today ${clock(at)}`
  if (sameDay(at, yesterday)) return `yesterday ${clock(at)}`
  return day(at)
}

export const whatFollows = 'What follows'
export const fineAdjustments = 'Fine adjustments'
export const moreResults = 'More results'
export const asksNothing = 'It asks for nothing more.'
export const saveAsFile = 'Save as a file'
export const savedAsFile = 'Saved as a file.'
export const saveCopy = 'Save a copy'
/** A button’s name for those who hear it: what it does, and to what. */
export const actOn = (act: string, title: string): string => `${act} ${title}`

export const removedText = (name: string): string => `“${name}” was removed.`

/** Why a change is refused while another tab is editing the sheet. */
export const OPEN_ELSEWHERE = 'This sheet is open in another tab or window. Take it over to edit it here.'
