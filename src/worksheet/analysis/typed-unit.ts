import {
  type DisplayUnit,
  NONE,
  ReadError,
  type Reading,
  readDisplayUnit,
  readQuantity,
  readSize,
  UnitTextError,
} from '../../units/index.ts'

/** A quantity or a size apart from the unit typed behind its figures. */
export interface TypedUnit {
  readonly figures: string
  readonly unit: string
}

/**
 * The unit typed behind a quantity or a size, `mm` of `53.4 x 40 mm`; undefined where there is none, or more than one, or
 * where it is part of a notation, as in `1/125 s`.
 */
export function typedUnit(text: string): TypedUnit | undefined {
  const plain = text.trim()
  const last = plain.search(/\d\D*$/)
  const figures = plain.slice(0, last + 1)
  const unit = plain
    .slice(last + 1)
    .trim()
    .replace(/^\[(.*)\]$/, '$1')
  if (last < 0 || unit === '' || !displayUnit(unit)) return undefined
  const [whole, alone] = [readingsOf(plain), readingsOf(figures)]
  const isBehindBoth =
    whole?.every(({ notation }) => notation === undefined) && alone?.every(({ dimension }) => dimension === NONE)
  return isBehindBoth ? { figures, unit } : undefined
}

/** What a text is read as: one quantity, or the sides of a size; undefined where it is neither. */
function readingsOf(text: string): readonly Reading[] | undefined {
  try {
    return [readQuantity(text)]
  } catch (error) {
    if (!(error instanceof ReadError)) throw error
  }
  try {
    const { width, height } = readSize(text)
    return [width, height]
  } catch (error) {
    if (error instanceof ReadError) return undefined
    throw error
  }
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
