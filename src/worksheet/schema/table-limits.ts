/** What a table may hold; a larger table is refused in words before it is taken. */
export const MAX_ROWS = 20_000
export const MAX_COLUMNS = 60
/** Signs in one field, as in any text of a sheet. */
export const MAX_TEXT_LENGTH = 20_000
