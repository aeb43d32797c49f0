/** A sheet holds so many at most. */
export const MOST_CELLS = 20_000
