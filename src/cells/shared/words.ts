import { andMore } from '../../units/plural.ts'
import type { CheckState } from './check-sign.ts'
import type { Origin } from './given-origin.ts'

/** The words that cells of several kinds share. */
export const cellWords = {
  caution: 'Caution:',
  useFor: (text: string, label: string): string => `Use ${text || 'it'} for ${label}`,
  atTheStand: 'Show at the stand',
  emptyNote: 'Empty note',
  measured: (label: string): string => `${label}, measured`,
  readAs: (value: string, constant?: string): string =>
    `read as ${value}${constant ? `, by the meter’s constant ${constant} (ISO 2720)` : ''}`,
  initials: 'Initials of who measures (optional)',
  signs: 'Insert a sign',
  insertSign: (sign: string, spoken: string): string => `Insert ${sign}, ${spoken}`,
  spokenSigns: { fNumber: 'f-number', oneOver: 'one over', times: 'times', plusOrMinus: 'plus or minus' },
  add: 'Add below',
  up: 'Move up',
  down: 'Move down',
  remove: 'Remove',
  from: 'From',
  to: 'To',
  title: 'Title',
  unit: 'Unit',
  filledWith: 'Filled in with',
  offers: 'Options',
  oneALine: 'one per line',
  more: andMore,
  noLongerThere: (name: string): string => `${name}, which is no longer in the sheet`,
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
export const ORIGIN_LABELS: Readonly<Record<Origin, string>> = {
  example: 'example',
  usual: 'usual',
  typed: '',
  kit: 'from kit',
  measured: 'measured',
}
