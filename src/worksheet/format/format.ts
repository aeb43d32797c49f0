/** What a worksheet's JSON says it is, under the key `format`. */
export const FORMAT = 'evenfield-worksheet'
/** The version this program writes; a document of a higher one opens read-only. */
export const VERSION = 2

/** The most cells in a worksheet. */
export const MAX_CELLS = 20_000
/** The most rows and columns of a table cell; a larger table is refused before it is read in. */
export const MAX_ROWS = 20_000
export const MAX_COLUMNS = 60
/** The most characters that can be typed into one text of a worksheet, and into its title. */
export const MAX_TEXT_LENGTH = 20_000
export const MAX_TITLE_LENGTH = 500
/** A text up to this long is read all the same: sheets were saved before the limits above were checked in typing. */
export const MAX_READ_LENGTH = 1_000_000

/** Names of cells: a letter, then letters, digits and underscores. Reserved words are refused by `refusedName`. */
export const NAME_PATTERN = /^[A-Za-z][A-Za-z0-9_]{0,63}$/

/** The stages of a job in the order of work; the sections of a worksheet follow them. */
export const STAGES = ['receive', 'frame', 'light', 'sharp', 'accept', 'deliver'] as const
export type Stage = (typeof STAGES)[number]
