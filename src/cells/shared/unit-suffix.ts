import { readDisplayUnit } from '../../units/index.ts'

/** The unit as shown after the field. */
export function unitSuffix(unit: string | undefined): string {
  if (!unit) return ''
  try {
    const shown = readDisplayUnit(unit)
    return shown.notation ? '' : shown.symbol
  } catch {
    return unit
  }
}
