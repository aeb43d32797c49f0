export { readingText } from './analysis/difference.ts'
export {
  ClippingError,
  clippingOf,
  fitted,
  LARGEST_CLIPPING,
  readClipped,
  readClipping,
  withFunctions,
} from './clipping/clipping.ts'
export { linesOf } from './clipping/lines.ts'
export { type Change, ChangeRefused } from './document/change.ts'
export { withMeasured } from './document/measured.ts'
export { freeName, isHeading, isNamed } from './document/names.ts'
export { declaredUnit, readGiven } from './document/read-given.ts'
export { LampDragSolver } from './dragging/lamp-drag-solver.ts'
export { movedBy, movedInto } from './editing/moving.ts'
export type {
  CheckOutcome,
  CheckSummary,
  DrawingOutcome,
  Outcome,
  ValueOutcome,
} from './engine/outcome.ts'
export { FORMAT, NAME_PATTERN, STAGES, type Stage, VERSION } from './format/format.ts'
export { KIT_SORTS, type KitSort } from './format/kit-sorts.ts'
export { FullSheet as Sheet } from './renaming/full-sheet.ts'
export {
  type Cell,
  type Check,
  type Column,
  type Drawing,
  type Frame,
  type FunctionCell,
  type Given,
  type NamedCell,
  type Note,
  type Range,
  type Result,
  type Run,
  type Steps,
  type TableCell,
  type Variants,
  type Worksheet,
  WorksheetSchema,
} from './schema/document.ts'
export { DRAWING_KINDS, type DrawingKind } from './schema/drawing-kinds.ts'
export { DocumentError, MAX_DOCUMENT_LENGTH, readData, readDocument, writeDocument } from './schema/read-document.ts'
