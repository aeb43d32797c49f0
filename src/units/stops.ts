import { STOP } from './dimension.ts'
import { STOP_DECIMALS, showFigure, showQuantity } from './show.ts'

/** A number of stops as meters and photographers read it, to a hundredth: `0.10 stop`, `1.33 stop`, `2 stop`. */
export const stopsText = (stops: number): string => showQuantity(stops, STOP).text

/** A signed number of stops with fixed decimals and without its unit: `+0.02`, `−0.06`, `0.00`. */
export function signedStops(stops: number, decimals = STOP_DECIMALS): string {
  const size = showFigure(Number(Math.abs(stops).toFixed(decimals)), decimals)
  if (!/[1-9]/.test(size)) return size
  return stops > 0 ? `+${size}` : `−${size}`
}
