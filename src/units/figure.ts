const THIN = '\u202f'
const SIGNIFICANT = 3

/** How many decimals show a figure to three significant digits, whole digits are never dropped. */
function decimalsFor(size: number): number {
  if (size === 0) return 0
  // 9.996 has the digits of 10.0, to which it rounds.
  const rounded = Number(size.toPrecision(SIGNIFICANT))
  return Math.max(0, SIGNIFICANT - 1 - Math.floor(Math.log10(rounded)))
}

/** Groups the whole digits by threes from five digits on. */
export function grouped(digits: string): string {
  const [whole, fraction] = digits.split('.') as [string, string?]
  const spaced = whole.length >= 5 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole
  return fraction === undefined ? spaced : `${spaced}.${fraction}`
}

function written(size: number, fixed: number | undefined, usual: number | undefined): string {
  const exact = Number(size.toPrecision(12))
  const power = exact.toExponential(usual === undefined ? SIGNIFICANT - 1 : undefined)
  if (exact !== 0 && (exact >= 1e9 - 0.5 || Number(power) < 1e-4)) {
    return (Number(power) === exact ? exact.toExponential() : power).replace('e+', 'e')
  }
  if (fixed !== undefined) return grouped(exact.toFixed(fixed))
  const rounded = exact.toFixed(usual ?? decimalsFor(exact))
  return grouped(Number(rounded) === exact && rounded.includes('.') ? rounded.replace(/\.?0+$/, '') : rounded)
}

/**
 * A figure with sensible digits: three significant (or the `usual` number of decimals), whole digits never dropped, an
 * exact value without needless zeros. `fixed` decimals, as a tolerance leaves them, keep their zeros.
 */
export function showFigure(value: number, fixed?: number, usual?: number): string {
  if (Number.isNaN(value)) return 'not a number'
  if (!Number.isFinite(value)) return value > 0 ? '∞' : '−∞'
  const size = Math.abs(value)
  const digits = written(size, fixed, usual)
  return value < 0 && /[1-9]/.test(digits) ? `−${digits}` : digits
}

/** A quantity as it was typed, as it is shown: with a true minus, and a degree sign beside its figure. */
export const asShown = (typed: string): string =>
  typed.replace(/(?<![\p{L}\d_)])-(?=\.?\d)/gu, '−').replace(/(?<=\d)\s+(?=[°′″](?!\p{L}))/gu, '')

/** A figure of more digits than this was converted, such as a third of an inch in millimetres: six say enough. */
const MOST_TYPED = 11
const ENDLESS = 6

/** The decimals that give back a figure that was typed. */
export function typedDecimals(value: number): number {
  const parts = (digits: number) =>
    Number(Math.abs(value).toPrecision(digits)).toExponential().replace('.', '').split('e')
  const [all = ''] = parts(12)
  const [digits = '', power] = parts(all.length > MOST_TYPED ? ENDLESS : 12)
  return Math.max(0, digits.length - 1 - Number(power))
}

/** As `showFigure`, but no digit of a figure that was typed is dropped. */
export const typedFigure = (value: number): string => showFigure(value, undefined, typedDecimals(value))

/** The decimals a tolerance leaves meaningful: its own first digit, its second too where that digit is 1. */
export function decimalsOf(tolerance: number): number {
  const exponent = Math.floor(Math.log10(tolerance))
  const leading = tolerance / 10 ** exponent
  return Math.min(12, Math.max(0, -exponent + (leading < 1.95 && Math.abs(leading - 1) > 1e-6 ? 1 : 0)))
}
