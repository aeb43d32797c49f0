import * as D from './dimension.ts'
import * as words from './words.ts'

/** A dimension's name where it has one (`illuminance`), else its powers (`length^2 time^-1`). */
export const nameOf = (dimension: D.Dimension): string => words.DIMENSION_NAMES.get(dimension) ?? dimension.powers

const KINDS: ReadonlyMap<D.Dimension, string> = new Map([
  [D.NONE, words.aPlainNumber],
  [D.STOP, words.aNumberOfStops],
  [D.PIXEL, words.aNumberOfPixels],
  [D.DATA, words.anAmountOfData],
])

/** A dimension in words, with its article: `a length`, `an illuminance`; one without a name by its powers, or as `unnamed`. */
export const aKind = (dimension: D.Dimension, unnamed = dimension.powers): string =>
  KINDS.get(dimension) ?? words.withArticle(words.DIMENSION_NAMES.get(dimension) ?? unnamed)
