import { type DisplayUnit, NONE, readDisplayUnit, UnitTextError } from '../../units/index.ts'

/** A quantity or a size apart from the unit typed behind its figures. */
export interface TypedUnit {
  readonly figures: string
  readonly unit: string
}

/** Figures of one or two numbers with their limits, and one unit behind them. */
const FIGURES_AND_UNIT = /^([-+−±\d\s.,x×*\u00a0\u2009\u202f]*\d)[\s\u00a0\u2009\u202f]*([\p{L}µ°%‰][^\s\d]*[²³]?)$/u

/** The unit typed behind a quantity or a size, `mm` of `53.4 x 40 mm`; undefined where there is none, or more than one. */
export function typedUnit(text: string): TypedUnit | undefined {
  const [, figures, unit] = FIGURES_AND_UNIT.exec(text.trim()) ?? []
  return figures !== undefined && unit !== undefined && displayUnit(unit) ? { figures, unit } : undefined
}

/** The unit typed behind a quantity or a size, to show figures in. */
export function typedDisplayUnit(text: string): DisplayUnit | undefined {
  const typed = typedUnit(text)
  return typed && displayUnit(typed.unit)
}

function displayUnit(text: string): DisplayUnit | undefined {
  try {
    const unit = readDisplayUnit(text)
    // A percentage is a number like others.
    return unit.symbol === '' || unit.dimension === NONE ? undefined : unit
  } catch (error) {
    if (error instanceof UnitTextError) return undefined
    throw error
  }
}
