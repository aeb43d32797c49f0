import { showValue } from '../../language/index.ts'
import { declaredUnit, type Result, type ValueOutcome } from '../../worksheet/index.ts'

/** How much a result is off, in its unit. Small amounts of a ratio or f-number are in per cent, because they are not ratios themselves. */
export function amountText(cell: Result, { type, value }: ValueOutcome, amount: number): string {
  const { unit } = declaredUnit(cell.unit)
  const odd = type.kind === 'number' && type.notation && Math.abs(amount) < Math.abs(value as number) / 2
  return odd
    ? `${Number(((100 * amount) / Math.abs(value as number)).toPrecision(2))} %`
    : showValue(amount, type, unit).text
}
