import { andMore } from '../../units/plural.ts'

/** The words that cells of several kinds share. */
export const cellWords = {
  caution: 'Caution:',
  useFor: (text: string, label: string): string => `Use ${text || 'it'} for ${label}`,
  atTheStand: 'Show at the stand',
  emptyNote: 'Empty note',
  measured: (label: string): string => `${label}, measured`,
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
