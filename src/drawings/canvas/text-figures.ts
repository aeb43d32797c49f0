import { showFigure } from '../../units/index.ts'

/** A figure with three significant digits, as everywhere in the sheet. */
export const figureText = (value: number): string => showFigure(Number(value.toPrecision(9)))

/** An f-number with its prefix: `f/5.66`. */
export const apertureText = (value: number): string => `f/${figureText(value)}`

/** A magnification as a ratio: `1:13.2`, `2:1`. */
export const ratioText = (magnification: number): string =>
  magnification >= 1 ? `${figureText(magnification)}:1` : `1:${figureText(1 / magnification)}`

/** The figure of a text such as `420 mm`, without its unit. */
export const withoutUnit = (shown: string): string => shown.replace(/ \D+$/, '')

/** The text with a capital at its start. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
