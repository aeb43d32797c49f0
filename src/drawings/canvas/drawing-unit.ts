import { showFigure } from '../../units/index.ts'

/** The units in which a drawing can show lengths. */
export type LengthUnit = 'mm' | 'cm' | 'in'

export const METRES: Readonly<Record<LengthUnit, number>> = { mm: 0.001, cm: 0.01, in: 0.0254 }

/** The requested unit if drawings support it, otherwise millimetres. */
export const lengthUnit = (asked: string | undefined): LengthUnit =>
  asked !== undefined && Object.hasOwn(METRES, asked) ? (asked as LengthUnit) : 'mm'

/** A formatter for lengths in metres: `857 mm`. */
export const lengthIn =
  (unit: LengthUnit) =>
  (metres: number): string =>
    `${showFigure(Number((metres / METRES[unit]).toPrecision(9)))} ${unit}`
