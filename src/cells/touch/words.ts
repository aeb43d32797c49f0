/** The words of fields on a touch screen. */
export const touchWords = {
  width: (label: string): string => `${label}, width`,
  height: (label: string): string => `${label}, height`,
  signs: 'Insert a sign',
  insertSign: (sign: string, spoken: string): string => `Insert ${sign}, ${spoken}`,
  spokenSigns: { fNumber: 'f-number', oneOver: 'one over', times: 'times', plusOrMinus: 'plus or minus' },
}
