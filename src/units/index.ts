export * from './dimension.ts'
export { type DisplayUnit, defaultUnit, type Notation, readDisplayUnit } from './display.ts'
export { allMarks, exactBehind, type Mark, type MarkedScale, nearestMark } from './marks.ts'
export { nearest } from './nearest.ts'
export {
  aKind,
  clip,
  type Offer,
  ReadError,
  type Reading,
  readQuantity,
  readSize,
  type SizeReading,
  showReading,
} from './read.ts'
export { type Shown, showFigure, showQuantity } from './show.ts'
export { findUnit, sameSigns, UNITS, type Unit, unitNote, unitSpellings, unitSymbols } from './table.ts'
export { type CompoundUnit, nearestUnit, readUnit, UnitTextError } from './unit-text.ts'
