import { aKind, type Dimension } from '../../units/index.ts'
import { count, plural } from '../../units/plural.ts'

/** What is said while a formula is computed, and where it does not fit its cell. */
export const VALUE_WORDS = {
  declares: (declared: string, found: string, factor?: { dimension: Dimension; divides: boolean }) =>
    `The cell declares ${declared}; the formula gives ${found}.${
      factor
        ? factor.divides
          ? ` Divide by ${aKind(factor.dimension)}.`
          : ` Multiply by ${aKind(factor.dimension)}.`
        : ''
    }`,
  declaresSteradian: (declared: string, found: string) =>
    `The cell declares ${declared}; the formula gives ${found}. Multiply by 1 sr: light from a lamp’s candela spreads over a solid angle.`,
  levelDeclaredAsDifference: (unit: string) =>
    `The cell declares ${unit}, a difference; the formula gives an exposure value, a level.`,
  differenceDeclaredAsLevel: (unit: string) =>
    `The cell declares ${unit}, a level; the formula gives a difference in stops.`,

  outOfRange: (argument: string, name: string, range: string, found: string) =>
    `“${argument}” must be ${range} in ${name}; here it is ${found}.`,
  notAChoice: (argument: string, name: string, choices: readonly string[], found: string) =>
    `“${argument}” in ${name} is one of ${choices.map((choice) => `"${choice}"`).join(', ')}; here it is "${found}".`,

  partNotYet: (part: string) => `“${part}” has not been measured yet.`,
  noPart: (part: string) => `With these figures there is no “${part}”.`,
  listsDiffer: (first: number, second: number) =>
    `One of these lists has ${plural(first, 'value')} and the other ${plural(second, 'value')}. They are computed value by value, so both need the same number.`,

  divisionByZero: 'Division by zero.',
  divisionByInfinity: 'Division by something infinite.',
  zeroToNegativePower: 'Zero cannot be raised to a power below zero.',
  noSuchRoot: 'A number below zero has no such power.',
  powerTooLarge: 'This power is too large to compute with.',
  noFigure: 'Something infinite gives no figure here.',
  tooLarge: 'This is too large to compute with.',
  resultNotANumber: 'The result is not a number.',
  resultTooLarge: 'The result is too large to compute with.',
  tooDeep: (most: number) => `Brackets, signs and calls go at most ${most} deep. Split the formula over several cells.`,
} as const

/** Words for ranges, kinds of values and fixes. The smallest chunk has them, so each is exported by itself. */
export const write = (text: string): string => `Write ${text}`
export const multiplyBySteradian = 'Multiply by 1 sr'
export const wholeNumber = 'a whole number'
export const fromTo = (least: string, most: string): string => `from ${least} to ${most}`
export const above = (bound: string): string => `above ${bound}`
export const atLeast = (bound: string): string => `at least ${bound}`
export const below = (bound: string): string => `below ${bound}`
export const aboveAndBelow = (above: string, below: string): string => `above ${above} and below ${below}`
export const atMost = (bound: string): string => `at most ${bound}`
export const exposureValue = 'an exposure value'
export const aRecord = (name: string): string => `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`
export const listOfNumbers = 'a list of numbers'
export const listOfRecords = (name: string): string => `a list of ${name} records`
export const listOf = (item: string): string => `a list, each ${item}`
export const moreValues = (more: number): string => `… ${count(more)} more`
