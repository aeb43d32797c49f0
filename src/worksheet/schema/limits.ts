/** A sheet holds so many at most. */
export const MAX_CELLS = 20_000
