/** What a schedule may hold; a larger table is refused in words before it is taken. */
export const MOST_ROWS = 20_000
export const MOST_COLUMNS = 60
/** Signs in one field, as in any text of a sheet. */
export const LONGEST_TEXT = 20_000
