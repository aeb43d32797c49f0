import { type Dimension, NONE } from '../../units/index.ts'
import type { Scope } from './scope.ts'
import type { Type } from './types.ts'

/** The most cells of a sheet that are searched for one message. */
const MOST_CELLS = 400

/** The cells of the sheet whose type passes, in the sheet's order. */
export function cellsThat(scope: Scope, passes: (type: Type) => boolean, most = 3): string[] {
  const found: string[] = []
  let looked = 0
  for (const name of scope.names()) {
    if (found.length >= most || ++looked > MOST_CELLS) break
    const type = scope.typeOf(name)
    if (type !== undefined && type !== 'unknown' && passes(type)) found.push(name)
  }
  return found
}

/** The quantity by which a value differs from what is required, where it is a single one: multiply or divide by it. */
export interface Factor {
  readonly dimension: Dimension
  readonly divides: boolean
}

/**
 * The quantity that a value of one dimension has to be multiplied by, or divided by, to be of another. Undefined
 * where no common one does.
 */
export function factorBetween(found: Dimension, required: Dimension): Factor | undefined {
  if (found === NONE || required === NONE) return undefined
  const [times, over] = [required.over(found), found.over(required)]
  if (isBase(times)) return { dimension: times, divides: false }
  return isBase(over) ? { dimension: over, divides: true } : undefined
}

/** Only a single base quantity is likely to have been left out: a time, a length, a count of pixels. */
const isBase = ({ exponents }: Dimension): boolean =>
  exponents.filter((exponent) => exponent !== 0).length === 1 && exponents.includes(1)
