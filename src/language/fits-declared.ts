import { type Dimension, SOLID_ANGLE } from '../units/index.ts'
import type { Checked } from './check.ts'
import type { Diagnostic } from './diagnostic.ts'
import { mend, problem } from './lookalikes.ts'
import { describeType, number } from './types.ts'

/**
 * Whether a formula of this type fits a cell that declares this dimension: undefined if so, else what to say.
 * Illuminance from a luminous intensity lacks its steradian; that is said.
 */
export function fitsDeclared(
  checked: Checked,
  text: string,
  declared: Dimension,
  symbol: string,
): Diagnostic | undefined {
  const type = checked.root?.type
  if (!type) return undefined
  const items = type.kind === 'list' ? type.of : type
  if (items.kind === 'number' && items.dimension === declared) return undefined
  const wanted = describeType(number(declared))
  const found = describeType(type)
  const steradian = items.kind === 'number' && items.dimension.times(SOLID_ANGLE) === declared
  return problem(
    `The cell declares ${symbol ? `${symbol}, ${wanted}` : wanted}; the formula gives ${found}.${steradian ? ' Multiply by 1 sr: light from a lamp’s candela spreads over a solid angle.' : ''}`,
    0,
    text.length,
    { found, wanted, mends: steradian ? [mend(`(${text}) * 1 sr`, 0, text.length, 'Multiply by 1 sr')] : [] },
  )
}
