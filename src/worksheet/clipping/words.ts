import { count } from '../../units/plural.ts'

/** Why a text cannot be pasted as cells: what is wrong, where, and what to do. */

export const noText = 'There is no text to paste. Copy cells first.'
export const tooLarge = 'This text is too large to paste as cells.'
/** The reasons are those of a file that cannot be opened. */
export const unreadableCells = (why: string): string =>
  `These cells cannot be pasted. ${why.replace(/^The file/, 'The text')}`
export const noCells =
  'This text contains no cells. Copy cells in Build with “Copy” or Ctrl C, or paste lines such as “name = formula”.'
export const tooManyCells = (cells: number, most: number): string =>
  `There would be ${count(cells)} cells; a sheet has at most ${count(most)}.`
export const tooManyLines = (lines: number, most: number): string =>
  `There would be ${count(lines)} lines; at most ${count(most)} can be pasted at once.`
export const noLine = 'This text contains no cells and no line such as “name = formula”.'
export const noLines = 'None of these lines is of the form “name = formula”, so nothing was pasted.'
export const notALine = 'it is not of the form “name = formula”'
export const leftOut = (line: number, text: string, why: string): string =>
  `Line ${line} is left out, “${text}”: ${why.replace(/\.$/, '')}.`
