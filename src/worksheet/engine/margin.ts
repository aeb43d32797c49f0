import { clip, ReadError, readDisplayUnit, readQuantity } from '../../units/index.ts'
import * as words from './words.ts'

/** The warning margin of a check that gives none, as a share of its limit. */
const DEFAULT_MARGIN = 0.1
/** The same as it is shown. */
export const DEFAULT_MARGIN_TEXT = `${100 * DEFAULT_MARGIN} %`

const PERCENT = readDisplayUnit('%')

export interface Margin {
  /** A share of the limit: 0.1 for 10 %. The default where the text cannot be read. */
  readonly share: number
  /** Why the text cannot be read. */
  readonly error?: string
}

const unreadable = (error: string): Margin => ({ share: DEFAULT_MARGIN, error })

/** Reads the margin within which a check that passes is marginal. A bare number is in per cent, the field's unit. */
export function readMargin(text: string | undefined): Margin {
  if (text === undefined || text.trim() === '') return { share: DEFAULT_MARGIN }
  try {
    const { value, notation, tolerance } = readQuantity(text, PERCENT)
    if (notation !== undefined) return unreadable(words.marginNotPercent(clip(text)))
    if (tolerance !== undefined) return unreadable(words.marginWithLimits(clip(text)))
    if (value < 0) return unreadable(words.marginBelowZero(clip(text)))
    return { share: value }
  } catch (error) {
    if (!(error instanceof ReadError)) throw error
    return unreadable(words.marginUnreadable(error.message))
  }
}

/** The warning margin as a share of the limit. */
export const marginOf = (text: string | undefined): number => readMargin(text).share

/** Whether a condition that passes does so within its margin; without a margin a value at its limit passes. */
export const isWithinMargin = (slack: number, margin: number): boolean => margin > 0 && slack <= margin * (1 + 1e-9)
