import { type Computable, ComputeError, type Scope, type Type, type Value } from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import { NONE } from '../../units/index.ts'
import { readMeasured } from '../document/measured.ts'
import { type GivenReading, readGiven } from '../document/read-given.ts'
import type { Given, NamedCell } from '../schema/document.ts'

/** The range of a given is for the converted value, so it is read without at first. */
const readWithoutRange = ({ least: _, most: _most, ...given }: Given): GivenReading => readGiven(given)

/** The cells with the constants that convert what is typed in a given, by their signs: none where nothing has to be converted. */
export function constantsRead(given: Given): readonly (readonly [string, string])[] {
  const { constants } = given
  if (!constants) return []
  const { signs } = readWithoutRange(given)
  return Object.entries(constants).filter(([sign]) => signs?.some((one) => one === sign))
}

/** A given that may be computed, as the engine has it. */
interface ReadCell {
  readonly cell: NamedCell
  reading: GivenReading | undefined
  computable: Computable | undefined
}

/** Has a given computed from the constants of the sheet, as far as they are there; else it is read with the usual ones. */
export function convertLight(node: ReadCell, given: Given, scope: Scope): void {
  const read = constantsRead(given).filter(([, name]) => {
    const type = scope.typeOf(name)
    return typeof type === 'object' && type.kind === 'number' && type.dimension === NONE
  })
  if (read.length === 0) return
  const reading = readWithoutRange(given)
  node.reading = reading
  node.computable = reading.type && {
    type: reading.type,
    inputs: read.map(([, cell]) => ({ cell })),
    spans: [],
    mayBeInfinite: false,
    program: (values, slots) => {
      const constants = read.map(([sign], at) => [sign, values[slots[at] as number]])
      const { value, error } = readGiven(given, Object.fromEntries(constants))
      if (value === undefined) throw new ComputeError(error?.message)
      return value
    },
  }
}

/** A result that may be measured, as the engine has it. */
interface MeasuredCell {
  readonly cell: NamedCell
  readonly type: Type | undefined
  readonly unit: DisplayUnit | undefined
  readonly measured: GivenReading | undefined
}

/** What was measured for a result, as it is read now: light by the constants of the sheet’s meters, as far as they are known. */
export function measuredNow(
  { cell, type, unit, measured }: MeasuredCell,
  valueNamed: (name: string) => Value | undefined,
): GivenReading | undefined {
  if (cell.kind !== 'result' || !type) return measured
  const constants = Object.entries(cell.constants ?? {}).map(([sign, name]) => [sign, valueNamed(name)])
  return readMeasured(cell.measured, type, unit, Object.fromEntries(constants))
}

/** How the text of a computed given is understood now: what the constant of a meter converts changes with that constant. */
export function readingNow(
  { cell, reading, computable }: ReadCell,
  valueNamed: (name: string) => Value,
): GivenReading | undefined {
  if (!computable || cell.kind !== 'given') return reading
  const used = new Set(computable.inputs.flatMap((input) => ('cell' in input ? [input.cell] : [])))
  const constants = constantsRead(cell).flatMap(([sign, name]) => (used.has(name) ? [[sign, valueNamed(name)]] : []))
  return readGiven(cell, Object.fromEntries(constants))
}
