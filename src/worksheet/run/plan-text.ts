import type { TilePlan } from '../../functions/camera/tile-plan.ts'
import { DATA, NONE, SAMPLING, showQuantity } from '../../units/index.ts'
import type { Means } from './reach.ts'
import * as words from './words.ts'

/** The figures of a plan in words, as the page, the paper and the terminal write them. */

const RATIO = { dimension: NONE, factor: 1, offset: 0, symbol: '', notation: 'ratio' } as const

/** A magnification as the trade writes it: `1:8.2`. */
export const ratioText = (magnification: number): string => showQuantity(magnification, NONE, { unit: RATIO }).text

/** `1 h 25 min`, to the minute; under a minute to the second. */
export function timeText(seconds: number): string {
  if (seconds < 59.5) return `${Math.round(seconds)} s`
  const minutes = Math.round(seconds / 60)
  if (minutes < 60) return `${minutes} min`
  const rest = minutes % 60
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`
}

/** An amount of data, given in bits, in the unit that suits it. */
export const dataText = (bits: number): string => showQuantity(bits, DATA).text

/** A sampling, given in pixels per metre, in ppi. */
export const samplingText = (sampling: number): string => showQuantity(sampling, SAMPLING).text

/** To the millimetre, as a scale on a column is read. */
export const heightText = (metres: number): string => `${Math.round(metres * 1e3)} mm`

interface CameraHeights {
  readonly heights?: { readonly least: number; readonly most: number } | undefined
  readonly track: number | undefined
}

/** Where the carriage is on the column; without a column, from original to sensor; empty without a lens. */
export function heightsText({ heights, track }: CameraHeights): string {
  if (!heights) return track === undefined ? '' : heightText(track)
  const [low, high] = [heightText(heights.least), heightText(heights.most)]
  return low === high ? low : words.fromTo(low.replace(/ mm$/, ''), high)
}

const listed = (pieces: readonly number[], show: (one: number) => string, unit: string): string =>
  `${pieces.map(show).join(' + ')} ${unit}`
const figure = (value: number): string => `${Number(value.toPrecision(4))}`

/** `tubes 12 + 20 mm`; empty where nothing is known of the lens. */
export function meansText(means: Means | undefined): string {
  if (!means) return ''
  if (means.kind === 'lens') return words.lensAlone
  const { length } = means.pieces
  return means.kind === 'tubes'
    ? words.tubes(
        length,
        listed(means.pieces, (length) => figure(length * 1e3), 'mm'),
      )
    : words.closeUps(length, listed(means.pieces, figure, 'dpt'))
}

/** `3 × 2 frames, turned`; empty for an original taken whole. */
export const tilesText = ({ across, down, count, turned }: TilePlan): string =>
  count === 1 ? '' : words.tiles(across, down, turned)

/** A number of working days; empty where it is not known. */
export const daysText = (days: number | undefined): string =>
  days === undefined ? '' : words.days(Number(days.toFixed(1)))
