import { type DisplayUnit, SOLID_ANGLE } from '../../units/index.ts'
import { type Diagnostic, fix, problem } from './diagnostic.ts'
import { describeType, number, type Type } from './types.ts'

/**
 * Whether a formula of this type fits a cell that declares this dimension: undefined if so, else what to say.
 * Illuminance from a luminous intensity lacks its steradian; that is said.
 */
export function fitsDeclared(type: Type, text: string, { dimension, symbol }: DisplayUnit): Diagnostic | undefined {
  const items = type.kind === 'list' ? type.of : type
  if (items.kind === 'number' && items.dimension === dimension) return undefined
  const wanted = describeType(number(dimension))
  const found = describeType(type)
  const steradian = items.kind === 'number' && items.dimension.times(SOLID_ANGLE) === dimension
  return problem(
    `The cell declares ${symbol ? `${symbol}, ${wanted}` : wanted}; the formula gives ${found}.${steradian ? ' Multiply by 1 sr: light from a lamp’s candela spreads over a solid angle.' : ''}`,
    0,
    text.length,
    steradian ? [fix(`(${text}) * 1 sr`, 0, text.length, 'Multiply by 1 sr')] : [],
  )
}
