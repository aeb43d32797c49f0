import type { SetUp } from './set-up-inputs.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

/** A field may be smaller than the original by rounding: one part in a million. */
const SAME = 1 + 1e-6

/** Where the figures of a set-up contradict each other: an original that does not lie within the field, or only turned. */
export function contradictionsOf(setUp: SetUp, show: (metres: number) => string): readonly string[] {
  const { originalWidth, originalHeight, fieldWidth, fieldHeight } = setUp
  if (originalWidth === undefined || originalHeight === undefined) return []
  if (fieldWidth === undefined || fieldHeight === undefined) return []
  const within = (across: number, down: number): boolean =>
    originalWidth <= across * SAME && originalHeight <= down * SAME
  if (within(fieldWidth, fieldHeight)) return []
  const original = WORDS.sides(show(originalWidth), show(originalHeight))
  const field = WORDS.sides(show(fieldWidth), show(fieldHeight))
  return [within(fieldHeight, fieldWidth) ? WORDS.fitsTurned(original, field) : WORDS.largerThanField(original, field)]
}
