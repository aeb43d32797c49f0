/** What is said about the functions of a sheet. */
export const functionWords = {
  functionNameTaken: (name: string) => `There is a function “${name}” already. Give this one another name.`,
  argumentName: (name: string) =>
    `“${name}” cannot be the name of an argument: it is a letter, then letters, digits and underscores, and no word of the formula language.`,
  argumentTwice: (name: string) => `Two arguments are named “${name}”.`,
  argumentUnit: (name: string, message: string) => `The unit of “${name}” cannot be read. ${message}`,
  noLimitsInFunction: 'The formula of a function has no “±”: limits come with the values it is called with.',
  inFunction: (name: string, message: string) => `In ${name}: ${message}`,
} as const
