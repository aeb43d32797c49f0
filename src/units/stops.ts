import { decimalsOf, showFigure } from './figure.ts'

/**
 * The constants of a light meter that is not known, by ISO 2720:1974: C for light on an original, lx s, and K for light
 * off it, cd s/m². EV at ISO 100 is log₂(100 E/C) or log₂(100 L/K).
 */
export const METER_C = 250
export const METER_K = 12.5

/** Meters read tenths of a stop, and careful work compares hundredths; a finer figure would be no better founded. */
const STOP_DECIMALS = 2

/** A number of stops without its unit, to a hundredth. Limits below half a hundredth are not shown. */
export function showStops(stops: number, limits: number | undefined): string {
  const rounded = Math.abs(stops) < 0.5 * 10 ** -STOP_DECIMALS ? 0 : stops
  if (limits === undefined || limits < 0.5 * 10 ** -STOP_DECIMALS)
    return stops === 0 || rounded !== 0 ? showFigure(rounded, undefined, STOP_DECIMALS) : (0).toFixed(STOP_DECIMALS)
  const decimals = Math.min(STOP_DECIMALS, decimalsOf(limits))
  return `${showFigure(rounded, decimals)} ± ${showFigure(limits, decimals)}`
}

/** A number of stops as meters and photographers read it, to a hundredth: `0.1 stop`, `1.33 stop`, `2 stop`. */
export const stopsText = (stops: number): string => `${showStops(stops, undefined)} stop`

/** A signed number of stops with fixed decimals and without its unit: `+0.02`, `−0.06`, `0.00`. */
export function signedStops(stops: number, decimals = STOP_DECIMALS): string {
  const size = showFigure(Number(Math.abs(stops).toFixed(decimals)), decimals)
  if (!/[1-9]/.test(size)) return size
  return stops > 0 ? `+${size}` : `−${size}`
}
