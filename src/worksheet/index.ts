export { type Change, ChangeRefused } from './change.ts'
export { ClippingError, clippingOf, fitted, LARGEST_CLIPPING, readClipping } from './clipping.ts'
export {
  type Cell,
  type Check,
  type Column,
  type Drawing,
  FORMAT,
  type Given,
  type NamedCell,
  type Note,
  type Range,
  type Result,
  type Run,
  type Schedule,
  type Steps,
  type Variants,
  VERSION,
  type Worksheet,
  WorksheetSchema,
} from './document.ts'
export { DRAWING_KINDS, type DrawingKind } from './drawing-kinds.ts'
export { KIT_SORTS, type KitSort } from './kit-sorts.ts'
export { withMeasured } from './measured.ts'
export { Mover, type Wanted } from './mover.ts'
export { movedBy, movedInto } from './moving.ts'
export { NAME_PATTERN } from './name-pattern.ts'
export { freeName, isNamed, refusedName } from './names.ts'
export type {
  CheckOutcome,
  DrawingOutcome,
  ErrorOutcome,
  Outcome,
  Standing,
  ValueOutcome,
  WaitingOutcome,
} from './outcome.ts'
export { DocumentError, LARGEST_DOCUMENT, readData, readDocument, writeDocument } from './read-document.ts'
export { declaredUnit, type GivenReading, readGiven } from './read-given.ts'
export type { Changed } from './sheet.ts'
export { STAGES, type Stage } from './stages.ts'
export { WholeSheet as Sheet } from './whole-sheet.ts'
