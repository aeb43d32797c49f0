import { anyOf, count } from '../../units/plural.ts'
import { MAX_CELLS } from '../format/format.ts'

/** Sentences about cells, their names and what is filled in. Each says what is wrong and what to do. */

const quoted = (text: string): string => `“${text}”`

export const cellNeedsName = 'A cell needs a name, so that formulas can use it.'
export const notAName = (name: string): string =>
  `${quoted(name)} cannot be a name: a name is a letter, then letters, digits and underscores, at most 64.`
export const reservedName = (name: string): string =>
  `${quoted(name)} cannot be a name: the formula language uses the word.`
export const nameTaken = (name: string): string => `Another cell is already named ${quoted(name)}.`
export const sheetFull = `A sheet has at most ${count(MAX_CELLS)} cells; these would be more.`
export const cellGone = 'This cell is no longer in the sheet.'
export const cellHasNoName = 'This cell has no name.'
export const sameId = 'A cell with this id is already in the sheet.'
export const renamingNotLoaded = 'Renaming could not be loaded. Check the network, then try again.'

export const write = (text: string): string => `Write ${text}`
export const unreadableUnit = (why: string): string => `The unit of this cell cannot be read. ${why}`
export const unreadableRange = (text: string, why: string): string =>
  `The range of this cell cannot be read: ${quoted(text)}. ${why}`
export const atLeast = (limit: string): string => `This must be at least ${limit}.`
export const atMost = (limit: string): string => `This must be at most ${limit}.`
export const whole = (below: number): string =>
  `This counts, so it is a whole number, such as ${below} or ${below + 1}.`

export const otherLight =
  'How lx and cd/m² relate depends on the surface. Type the reading in the unit of this field, or as EV at ISO 100.'
export const yesOrNo = 'Answer yes or no.'
export const date = 'A date is written year-month-day, such as 2026-11-25.'
const MOST_OPTIONS = 8
export function chooseOne(options: readonly string[]): string {
  const shown = options.slice(0, MOST_OPTIONS).map(quoted)
  const more = options.length - shown.length
  return `This is not one of the options. Choose ${anyOf(more > 0 ? [...shown, `one of ${count(more)} more`] : shown)}.`
}
export const noOptions = 'There are no options to choose from yet. Add them in Build.'

export const sizeNeedsUnit = 'A size needs a unit. Give the cell one, such as mm.'
export const sizeOfTwoKinds = 'Width and height must be of the same kind.'
export const sizeAboveZero = 'Both sides of a size must be above zero.'
export const listIsEmpty = 'Write values with commas between them, such as 12, 20, 36.'
export const listOfTwoKinds = 'The values of a list must be of the same kind.'
export const listWithLimits = 'The values of a list take no ± limits. Type the values alone, such as 12, 20, 36.'
export const twoValues = 'two values'

export const coverage = (why: string): string =>
  `Coverage factor: ${why} Write how many standard deviations the limits are, such as 2.`
export const notAboveZero = (text: string): string => `${quoted(text)} is not a number above zero.`

export const measuredOnlyQuantity = (kind: string): string => `Only a quantity can be measured; this is ${kind}.`
export const measuredOtherKind = (kind: string, text: string, found: string): string =>
  `This is ${kind}; ${quoted(text)} is ${found}.`

export const chooseSort = 'Choose in Build what kind of equipment this is.'
export const noPieceStored = (text: string, sort: string): string =>
  `${quoted(text)} is the name of a ${sort} without its figures. Choose a ${sort} from the kit, or clear this field and type the figures themselves.`
export const unreadableFigure = (figure: string, sort: string, why: string): string =>
  `The ${figure} of this ${sort} cannot be read: ${why} Correct it in the kit, then choose it again.`

export const sizeInQuantity =
  'This is a size, width × height, and one quantity goes here. Fill the cell in with a size instead, or type one of the two.'

/** What a sheet without a title is called. */
export const UNTITLED_SHEET = 'Untitled worksheet'
