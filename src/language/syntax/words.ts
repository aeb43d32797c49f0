import { writePlusMinus } from '../../units/words.ts'

/**
 * What is said of text that is no formula yet. Each sentence says what is wrong in the words of the formula, and what
 * to write. “Quotes” hold what was typed or what to type.
 */
export const SYNTAX_WORDS = {
  tooLong: (most: number, found: number) =>
    `A formula has at most ${most} characters; this one has ${found}. Split it over several cells.`,
  bracketsTooDeep: (most: number) => `Brackets go at most ${most} deep. Split the formula over several cells.`,
  empty: 'A formula is missing here.',

  leadingEquals: 'A formula starts without “=”.',
  trailingEquals: 'A formula ends without “=”.',
  assignment: (name: string) =>
    `“${name} =” names a value. The cell has its own field for the name; the formula is only what follows.`,
  longDash: 'A long dash is not a minus sign. Write “-”.',
  plusMinus: writePlusMinus,
  commaInNumber: (found: string) =>
    `“${found}” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.`,
  writeNumbers: (list: string, count: number) => `Write ${list}, ${count} numbers`,
  semicolon: 'Arguments and the values of a list are separated by commas, not by “;”.',
  invisible: (code: string) => `There is an invisible character here (${code}).`,
  apostropheInNumber: (found: string) => `“${found}” is one number: write its digits together, or with thin spaces.`,
  feet: 'Feet are written “ft”.',
  inches: 'Inches are written “in”.',
  equality: 'Equality is written with one “=”.',
  atMost: 'At most and at least are written “<=” and “>=”.',
  notEqual: '“Not equal” is written “!=” or “≠”.',
  power: 'A power is written with “^”.',
  and: 'Conditions are joined with “and”.',
  or: 'Conditions are joined with “or”.',
  not: 'The opposite of a condition is written with “not”.',
  absolute: 'The absolute value is written “abs(…)”.',
  quotes: 'Text is written in straight double quotes.',
  root: (name: string) => `A root is written “${name}(…)”.`,
  pi: '“π” is written “pi”.',
  otherSign: (found: string, meant: string) => `“${found}” is written “${meant}” in a formula.`,
  vulgarFraction: (found: string) =>
    `“${found}” is written as a number with a decimal point, or as a fraction of a unit.`,

  remove: (found: string) => `Remove “${found}”`,
  removeIt: 'Remove it',
  openWith: (sign: string) => `Open with “${sign}”`,
  closeWith: (sign: string) => `Close with “${sign}”`,
  closeFirst: (sign: string) => `Close with “${sign}” first`,

  unclosedText: 'This text has no closing “"”.',
  unclosed: (sign: string, closing: string) => `“${sign}” has no closing “${closing}”.`,
  closesNothing: (sign: string, opening: string) => `“${sign}” has no opening “${opening}” before it.`,
  wrongClosing: (sign: string, closing: string, found: string) =>
    `The bracket “${sign}” is closed with “${closing}”, but “${found}” comes first.`,
  missingAfter: (sign: string) => `Something is missing after “${sign}”.`,
  unfinished: 'The formula is not finished.',
  doesNotFit: (found: string) => `“${found}” does not fit here.`,

  mixedNumber: (found: string) => `“${found}” is not one number in a formula. Write a sum.`,
  missingSign: (left: string, right: string) => `There is no sign between “${left}” and “${right}”.`,
  missingPlus: (unit: string, second: string) =>
    `There is no sign between “${unit}” and “${second}”. Write a sum with “+”.`,
  missingTimes: (right: string) => `There is no sign before “${right}”. To multiply, write “*”.`,
  raisedFigure: (power: string) => `A superscript belongs to a unit. Here a power is written “^${power}”.`,
  unitAfterBracket: (unit: string) => `A unit goes after a number. After a bracket, multiply by 1 ${unit}.`,
  wordIsUnit: (number: string, word: string) =>
    `After the number ${number}, “${word}” is read as a unit. To multiply, write “*”.`,
  compoundUnit: (unit: string) => `A unit of more than one part is written in brackets: [${unit}].`,
  spaceInNumber: (number: string) => `There is a space inside the number “${number}”. Write its digits together.`,
  digitsMissing: (number: string) => `There are no digits after the decimal point of “${number}.”.`,
  argumentsInBrackets: (name: string) => `The arguments of “${name}” go in parentheses.`,
  spacedName: (name: string) => `A name has no spaces: “${name}”.`,
  unitOfCell: (name: string, unit: string) => `“${name}” has its unit already; leave out “${unit}”.`,
  fNumber: (mark: string) => `The f-number is written “${mark}”.`,
  size: (width: string, height: string) =>
    `A width and a height together are a size: “size(${width}, ${height})”. To multiply, write “*”.`,
  speed: (number: string) => `An ISO speed is a plain number in a formula: ${number}.`,
  listInBraces: 'A list is written in braces: {1, 2, 3}.',
  conditional: 'A choice is written “when(condition, then, otherwise)”.',
  dateAsText: 'A date is text in a formula, year-month-day in quotes.',
} as const
