import { type Computable, ComputeError, type Scope } from '../../language/index.ts'
import { NONE } from '../../units/index.ts'
import type { MeterSign } from '../document/light-reading.ts'
import { type GivenReading, readGiven } from '../document/read-given.ts'
import type { Given } from '../schema/document.ts'

/** The range of a given is for the converted value, so it is read without at first. */
const readWithoutRange = ({ least: _, most: _most, ...given }: Given): GivenReading => readGiven(given)

/** The cells with the constants that convert what is typed in a given: none where nothing has to be converted. */
export function constantsRead(given: Given): readonly (readonly [MeterSign, string])[] {
  const { constants } = given
  if (!constants) return []
  return (readWithoutRange(given).signs ?? []).flatMap((sign) => {
    const name = constants[sign]
    return name === undefined ? [] : [[sign, name] as const]
  })
}

/** What computes a given from the constants of the sheet; undefined where the usual ones convert it, or none does. */
export function lightProgram(
  given: Given,
  scope: Scope,
): { computable: Computable; reading: GivenReading } | undefined {
  const read = constantsRead(given).filter(([, name]) => {
    const type = scope.typeOf(name)
    return type !== undefined && type !== 'unknown' && type.kind === 'number' && type.dimension === NONE
  })
  const reading = readWithoutRange(given)
  if (read.length === 0 || !reading.type) return undefined
  const signs = read.map(([sign]) => sign)
  return {
    reading,
    computable: {
      type: reading.type,
      inputs: read.map(([, name]) => ({ cell: name })),
      spans: [],
      mayBeInfinite: false,
      program: (values, slots) => {
        const { value, error } = readGiven(
          given,
          Object.fromEntries(signs.map((sign, at) => [sign, values[slots[at] as number] as number])),
        )
        if (value === undefined) throw new ComputeError(error?.message ?? '')
        return value
      },
    },
  }
}
