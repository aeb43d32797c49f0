/** The data of a newer worksheet, where that is what an error is about, at any depth. */
export function newerIn(error: unknown): unknown {
  for (let at = error; at instanceof Error; at = at.cause)
    if ('isNewer' in at && at.isNewer === true && 'data' in at) return at.data
  return undefined
}
