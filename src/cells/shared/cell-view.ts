import type { Signal } from '@lit-labs/signals'
import { labelOf as labelOfNamed, titleOf } from '../../worksheet/document/label.ts'
import {
  type Cell,
  type Change,
  type Check,
  type CheckOutcome,
  type Drawing,
  type DrawingOutcome,
  type Frame,
  type FunctionCell,
  type Given,
  isNamed,
  type Note,
  type Outcome,
  type Range,
  type Result,
  type Run,
  type Sheet,
  type Steps,
  type TableCell,
  type Variants,
} from '../../worksheet/index.ts'

interface View<C extends Cell, O> {
  readonly cell: C
  /** What became of it. */
  readonly outcome: O
  /** What a person calls the cell of this name. */
  readonly called: (name: string) => string
}

/** Shows more than the outcome when it is asked: mends, the working, where a lamp may be dragged. */
interface Asking {
  readonly sheet: Sheet
}

/** A cell as it stands now: all that the element showing it needs. */
export type GivenView = View<Given, Outcome> & Asking
export type ResultView = View<Result, Outcome> & Asking
export type CheckView = View<Check, CheckOutcome> & Asking
export type NoteView = View<Note, undefined>
export type DrawingView = View<Drawing, DrawingOutcome> & Asking
/** Cells of these kinds take the whole width; what shows them is fetched when there is one. */
export type WideCell = Steps | TableCell | Range | Variants | Run | Frame | FunctionCell
export type WideView<C extends WideCell = WideCell> = View<C, Outcome | undefined> & Asking
export type CellView = GivenView | ResultView | CheckView | NoteView | DrawingView | WideView

/** One signal a cell: an edit wakes only the elements whose cells it reached. */
export type CellSignal<V extends CellView = CellView> = Signal.State<V>

/** What an element that shows a cell needs of its signal. */
export type ReadView<V extends CellView = CellView> = Pick<CellSignal<V>, 'get'>

/** An element asks for a change; whoever holds the sheet makes it, or says why not. */
export interface Asked {
  readonly change: Change
  /** Changes asked with the same key, one after another, are one step of undo. */
  readonly merge?: string
  refused?: string
}

declare global {
  interface HTMLElementEventMap {
    'change-asked': CustomEvent<Asked>
    /** The id of a cell to be brought into view, with the focus. */
    'cell-wanted': CustomEvent<string>
  }
}

/** Leads to another cell. */
export function goToCell(from: HTMLElement, id: string): void {
  from.dispatchEvent(new CustomEvent<string>('cell-wanted', { detail: id, bubbles: true, composed: true }))
}

/** Asks for a change. Gives why it was refused, or undefined where it was made. */
export function requestChange(from: HTMLElement, change: Change, merge?: string): string | undefined {
  const detail: Asked = merge === undefined ? { change } : { change, merge }
  from.dispatchEvent(new CustomEvent<Asked>('change-asked', { detail, bubbles: true, composed: true }))
  return detail.refused
}

/** What a person calls a cell. */
export function labelOf(cell: Cell): string {
  if (cell.kind === 'note') return cell.text.split('\n', 1)[0] || 'Empty note'
  return isNamed(cell) ? labelOfNamed(cell) : titleOf(cell)
}
