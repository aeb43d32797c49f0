import type { Given } from '../schema/document.ts'
import { mapKeys } from './kind.ts'

type Followed = Pick<Given, 'read_under' | 'measured_under'>

/** What a reading is taken under, and was, by other names. */
export const renamedReading = (
  { read_under: names, measured_under: under }: Followed,
  one: (name: string) => string,
): Followed => ({
  ...(names ? { read_under: names.map(one) } : {}),
  ...(under ? { measured_under: { ...under, figures: mapKeys(under.figures, one) } } : {}),
})
