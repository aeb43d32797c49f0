import { showFigure } from '../../units/index.ts'

/** Stops as the rest of the sheet shows them: hundredths, below 0.2 thousandths. */
export const stopsText = (stops: number): string =>
  Number.isFinite(stops) ? `${unsigned(stops, Math.abs(stops) < 0.2 ? 3 : 2)} stop` : 'more than can be counted'

const unsigned = (value: number, decimals: number): string =>
  // What rounds to nothing bears no sign.
  value
    .toFixed(decimals)
    .replace(/^-(?=[0.]*$)/, '')
    .replace('-', '−')

/** A difference with its sign: `+0.02`, `−0.06`, `0.00`. */
export const signedText = (value: number, decimals: number): string => {
  const text = unsigned(value, decimals)
  return /^[0.]*$/.test(text) || text.startsWith('−') ? text : `+${text}`
}

/** Three digits, as any figure of the sheet. */
export const figureText = (value: number): string => showFigure(Number(value.toPrecision(9)))

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

export const series = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`
