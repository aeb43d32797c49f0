import type { GivenSource } from '../../worksheet/schema/document.ts'
import type { CheckState } from './check-sign.ts'

/** The words that cells of several kinds share as soon as a sheet opens. */
export const cellWords = {
  caution: 'Caution:',
  useFor: (text: string, label: string): string => `Use ${text || 'it'} for ${label}`,
  atTheStand: 'Show at the stand',
  emptyNote: 'Empty note',
  readAs: (value: string, constant?: string): string =>
    `read as ${value}${constant ? `, by the meter’s constant ${constant} (ISO 2720)` : ''}`,
}

/** The word of each state of a check; its sign repeats it as a shape. */
export const STATE_LABELS: Readonly<Record<CheckState, string>> = {
  pass: 'Pass',
  marginal: 'Marginal',
  fail: 'Fail',
  waiting: 'Waiting',
  error: 'Error',
}

/** The word after a field that says where its value comes from; the user's own values need none. */
export const ORIGIN_LABELS: Readonly<Record<GivenSource, string>> = {
  example: 'example',
  usual: 'usual',
  typed: '',
  kit: 'from kit',
  measured: 'measured',
}
