/** The words of a given that is a piece of kit. */
export const kitChoiceWords = {
  noneChosen: 'None',
  choose: 'Choose',
  change: 'Change',
  chooseFor: (label: string): string => `Choose: ${label}`,
  changeFor: (label: string): string => `Change: ${label}`,
  chooseA: (aSort: string): string => `Choose ${aSort}`,
  noSort: 'No kind of equipment is set',
  copyInSheet: (name: string): string => `${name}, as in this sheet`,
  from: 'From',
  yourKit: 'your kit',
}
