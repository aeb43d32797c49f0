import { wholeNumber } from '../../language/values/words.ts'
import { anyOf } from '../../units/plural.ts'

/** Why a worksheet's file cannot be opened: what is wrong, and where. */

export const nestedTooDeep = 'The file is nested too deeply to be a worksheet.'
export const tooLarge = 'The file is too large to be a worksheet.'
export const notJson = (why: string): string =>
  `The file is not JSON (${why}), so it is not a file that Evenfield saved.`
export const notAWorksheet = (format: string): string => `This is not a worksheet: its “format” is not “${format}”.`
export const newer = (version: number, read: number): string =>
  `This worksheet was made by a newer version (its version is ${version}, this one reads up to ${read}). Open it with a newer one.`
export const at = (place: string, why: string): string => `At “${place}”: ${why}`
export const sameId = (cell: number, id: string): string => `At “cells[${cell}].id”: two cells have the id “${id}”.`
export const nameIsLetter = 'A name is a letter, then letters, digits and underscores.'
export const nameOfGiven = 'This must be the name of a given, such as border or original.width.'

/** What is wrong with one value of a file; the sentence follows its place. */
export const missing = 'this is missing.'
export const mustBe = (expected: string, found: string): string => `this must be ${expected}, not ${found}.`
export const aLength = (count: string): string => `of a length of ${count}`
export const oneOf = anyOf
export const AT_MOST = 'at most '
export const AT_LEAST = 'at least '
/** What some rules ask for, where the library names only the rule. */
export const BY_RULE: Readonly<Record<string, string>> = {
  integer: wholeNumber,
  regex: 'a letter, then letters, digits and underscores',
}
export const KINDS_OF_JSON: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
  Array: 'a list',
  Object: 'an object',
}
