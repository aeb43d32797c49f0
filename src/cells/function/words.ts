/** The words of a function of the sheet's own. */
export const functionWords = {
  name: 'Name',
  about: 'What it computes',
  arguments: 'Arguments',
  argument: (at: number): string => `Argument ${at}`,
  addArgument: 'Add an argument',
  unitOf: (name: string): string => `Unit of ${name}`,
  aboutOf: (name: string): string => `What ${name} is`,
  formula: 'Formula, from the arguments',
  examples: 'Worked examples',
  example: (at: number): string => `Example ${at}`,
  gives: (at: number): string => `Example ${at} gives`,
  addExample: 'Add an example',
  isRight: 'right',
  isWrong: (shown: string): string => (shown === '' ? 'wrong' : `wrong, it gives ${shown}`),
  howToCall: (signature: string): string => `Call it in any formula of this sheet: ${signature}`,
}
