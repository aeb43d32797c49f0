import { aKind, type Dimension } from '../../units/index.ts'
import { listText } from '../../units/plural.ts'
import { didYouMean } from '../../units/words.ts'
import { SYNTAX_WORDS } from '../syntax/words.ts'
import { aRecord } from '../values/words.ts'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const isWritten = (found: string, written: string): string => `“${found}” is written “${written}”.`
const COUNTS = ['no arguments', 'one argument', 'two arguments', 'three arguments']

/**
 * What is said of a formula that can be read but does not fit together. Each sentence says what is wrong in the words
 * of the formula, where, and what to do. Values are described with their article: `a length`, `a list of numbers`.
 */
export const CHECK_WORDS = {
  remove: SYNTAX_WORDS.remove,
  removeName: 'Remove the name',
  addArguments: (names: readonly string[]) => `Add ${names.join(', ')}`,
  ifLeftOut: (value: string) => `${value} if left out`,
  orAnotherText: 'or another text',
  followsArguments: 'depends on its arguments',

  nestedTooDeep: 'This is nested too deeply. Split the formula over several cells.',
  doesNotFit: SYNTAX_WORDS.doesNotFit,
  needsNumber: (found: string) => `This is ${found}; a number or a quantity is required here.`,
  dateIsText: 'A date is text in a formula, and text cannot be computed with.',
  needsCondition: (found: string) => `This is ${found}; a condition such as “a < b” is required here.`,

  limitsOnlyOfNumbers: 'Only a number or a quantity can have limits.',
  limitsDiffer: (value: string, limits: string) => `The value is ${value}, but its limits are ${limits}.`,
  limitsInside: '“±” is written once, at the end of the whole formula.',

  tooLarge: (found: string) => `“${found}” is too large to compute with.`,
  digitMissing: (where: 'before' | 'after', found: string) =>
    `There is no digit ${where} the decimal point of “${found}”.`,
  fNumberHasNoUnit: (mark: string, division: string) =>
    `“${mark}” is an f-number and has no unit. A division is written with spaces: “f / (${division})”.`,
  unclearFraction: (sign: string, fraction: string) =>
    `After “${sign}” it is unclear where the fraction “${fraction}” ends. Put it in parentheses.`,
  fractionOfZero: 'The lower number of a fraction cannot be zero.',
  kelvinOnly: 'Formulas take temperatures in kelvin. Degrees Celsius belong in a given.',
  notAUnit: (found: string, near?: string) => `“${found}” is not a unit.${didYouMean(near)}`,
  unitWord: isWritten,
  otherUnit: (found: string, written: string) => `“${found}” is written ${written} in a formula.`,
  speed: SYNTAX_WORDS.speed,
  dinSpeed: (speed: string) => `Degrees DIN are a logarithm of the speed. The same ISO speed is ${speed}.`,
  dinAsIso: 'Degrees DIN are a logarithm of the speed. Write the ISO speed, a plain number.',
  cellAfterNumber: (name: string) => `After a number, “${name}” is read as a unit. To multiply, write “*”.`,
  powerOfUnit: (found: string) => `“${found}” is not a unit. A power is written with “^”.`,
  ratioOfName: 'A ratio has two numbers, such as 1:4. With a cell, write a division.',
  ratioToZero: 'A ratio to zero has no value.',
  fNumberOrCell: (mark: string) => `“${mark}” is an f-number. To divide the cell “f”, put spaces around “/”.`,
  divisionOrFNumber: (found: string, mark: string) =>
    `“${found}” divides the cell “f”. The f-number is written ${mark}.`,
  frequencyOrTime: (found: string, time: string) =>
    `“${found}” is a division and gives a frequency. The exposure time is written ${time}.`,
  compoundUnit: (unit: string) =>
    `A unit of more than one part is written in brackets: ${unit}. To divide by a cell, put spaces around “/”.`,

  noCell: (name: string, near?: string) => `There is no cell named “${name}”.${didYouMean(near)}`,
  functionNeedsArguments: (name: string) => `“${name}” is a function. Its arguments go in parentheses.`,
  unitNeedsNumber: (name: string) => `“${name}” is a unit. Write a number before it.`,
  infinityOnlyArgument: '“infinity” can only be an argument of a function.',
  fNumber: SYNTAX_WORDS.fNumber,
  yesOrNo: isWritten,
  notARecord: (found: string) => `Only a record has parts; this is ${found}.`,
  noPart: (record: string, part: string, parts: readonly string[]) =>
    `${capital(aRecord(record))} has no part “${part}”. Its parts are ${listText(parts)}.`,
  needsPart: (record: string, parts: readonly string[]) =>
    `This is ${aRecord(record)}. Name the part to use: ${listText(parts.map((part) => `.${part}`))}.`,
  emptyList: 'A list has at least one value.',
  mixedList: (first: string, found: string) =>
    `The values of a list are of one kind: the first is ${first}, this is ${found}.`,

  cellIsNoFunction: (name: string) => `“${name}” is a cell, not a function. To multiply, write “*” before the bracket.`,
  noFunction: (name: string, near?: string) => `There is no function “${name}”.${didYouMean(near)}`,
  otherFunction: isWritten,
  whenTakes: '“when” takes three arguments: when(condition, then, otherwise).',
  outcomesDiffer: (then: string, otherwise: string) =>
    `The two outcomes of “when” differ in kind: ${then} and ${otherwise}.`,
  givenTwice: (name: string) => `“${name}” is given twice.`,
  afterNamed: (name: string, call: string) => `After the named argument “${name}”, name the others too: ${call}.`,
  tooMany: (name: string, most: number, call: string) =>
    `${name} takes ${COUNTS[most] ?? `${most} arguments`}: ${call}.`,
  missing: (name: string, missing: readonly string[], call: string) =>
    `${name} needs ${listText(missing)} too: ${call}.`,
  noArgument: (name: string, argument: string, near: string | undefined, call: string) =>
    `${name} has no argument “${argument}”.${near ? didYouMean(near) : ` It takes ${call}.`}`,
  colonForArgument: (name: string) => `The value of an argument follows “:”, as in “${name}: …”.`,
  cannotBeInfinite: (name: string) => `“${name}” cannot be infinite.`,
  wrongArgument: (name: string, argument: string, about: string, required: string, found: string) =>
    `“${argument}” of ${name} (${about}) must be ${required}; this is ${found}.`,
  sameKindAs: (kind: string, name: string) => `${kind}, as “${name}” is`,
  notAChoice: (name: string, choices: readonly string[]) =>
    `“${name}” is one of ${choices.map((choice) => `"${choice}"`).join(', ')}.`,

  cannotCombine: (done: 'added' | 'subtracted' | 'compared', left: string, right: string) =>
    `${capital(left)} and ${right} cannot be ${done}.`,
  listCompared: (source: string) =>
    `“${source}” has many values, and a comparison has two. Compare its “least(…)” or “greatest(…)”, or compare row by row in a column of the table.`,
  listTaken: (source: string, name: string) =>
    `“${source}” has many values, and ${name} takes one. Use one figure of it, or compute it row by row in a column of the table.`,
  cannotCompare: (found: string, sign: string) => `${capital(found)} cannot be compared with “${sign}”.`,
  chained: 'Comparisons do not chain. Join two with “and”.',
  factor: (dimension: Dimension, divides: boolean) =>
    divides
      ? ` Dividing by ${aKind(dimension)} would make them the same kind.`
      : ` A factor is missing: × ${aKind(dimension)}.`,
  percentOfQuantity: (percent: string, quantity: string) =>
    `${percent} alone is a number. To add that share of ${quantity}, multiply.`,
  assignment: (name: string) =>
    `There is no cell named “${name}” to compare with. To give a value a name, write the name in the cell’s field; the formula is only what follows “=”.`,
  sizeOrProduct: (found: string, size: string) => `“${found}” multiplies. A width and a height are a size: ${size}.`,
  dateOrSum: (found: string) => `“${found}” is computed as arithmetic. A date is text, in quotes.`,

  powerOfQuantity:
    'A unit takes a whole-number power, written straight after it. Put the quantity in parentheses to raise it to a power.',
  exponentIsPlain: (found: string) => `An exponent is a plain number; this is ${found}.`,
  exponentWrittenOut: (base: string) =>
    `To raise ${base}, write the exponent as a number, so that the unit of the result is known.`,
  noSuchPower: (base: string) =>
    `There is no unit for this power of ${base}; whole-number powers and simple roots have one.`,

  addLevels: 'Two exposure values cannot be added: each is a level. A difference in stops can be added to one.',
  addTemperatures: 'Two temperatures cannot be added. A difference in kelvin can be added to one.',
  levelFromDifference: 'A level cannot be subtracted from a difference. Write the exposure value first.',
  scaledLevel: (done: string) =>
    `An exposure value is a level and cannot be ${done}. Only differences in stops can be.`,
  levelNotDifference: (name: string) => `${name} is a difference in stops; this is an exposure value, a level.`,
  differenceNotLevel: (name: string) => `${name} is an exposure value, a level; this is a difference in stops.`,
  levelAndDifference: (done: string) => `An exposure value and a difference in stops cannot be ${done}.`,
  takenTogether: 'taken together',
  outcomesOfOneChoice: 'outcomes of one choice',
  valuesOfOneList: 'values of one list',
  raisedToAPower: 'raised to a power',
  argumentOf: (argument: string, name: string) => `“${argument}” of ${name}`,

  holeNeeds: (required: string) => `Here ${required} is required.`,
  holeFits: (cells: readonly string[], more: number) =>
    ` In this sheet: ${listText(more > 0 ? [...cells, `${more} more`] : cells)}.`,
  holeNothingFits: ' No cell of this sheet fits.',
  anyNumber: 'a number or a quantity',
  anyQuantity: 'any quantity',
  anyList: 'any list',
  anyOrList: 'any quantity, or a list of any quantities',
  listOfAny: 'a list of any quantities',
  anything: 'a value of any kind',
  listOfNumbers: 'a list of numbers or quantities',
  list: 'a list',

  addUnit: (unit: string) => `Add the unit ${unit}`,
} as const

/** What is said of a function: in the guide, in hover help and in the terminal. */
export const RECORD_WORDS = {
  gives: (result: string) => `Gives ${result}`,
  appliesTo: (validity: string) => `Applies to: ${validity}`,
  caution: 'Caution:',
  source: (source: string) => `Source: ${source}`,
  example: (result: string) => `gives ${result}`,
  howChecked: 'How this was checked',
  notPublished:
    'No published value was found for this function. It is checked by its derivation and its worked examples.',
  quoted: '; as quoted by others',
} as const
