/** The words that cells of several kinds share once one of them is opened. */
export const openedWords = {
  measured: (label: string): string => `${label}, measured`,
  add: 'Add below',
  up: 'Move up',
  down: 'Move down',
  remove: 'Remove',
  from: 'From',
  to: 'To',
}
