import type { Signal } from '@lit-labs/signals'
import { labelOf as labelOfNamed, titleOf } from '../../worksheet/document/label.ts'
import {
  type Cell,
  type Change,
  type Check,
  type CheckOutcome,
  type Drawing,
  type DrawingOutcome,
  type Given,
  isNamed,
  type Note,
  type Outcome,
  type Result,
  type Sheet,
} from '../../worksheet/index.ts'
import { cellWords } from './words.ts'

interface View<C extends Cell, O> {
  readonly cell: C
  /** What the engine computed for it. */
  readonly outcome: O
  /** The label of the cell with a name. */
  readonly called: (name: string) => string
  /** Whether it is computed from an example's figures. */
  readonly rests?: boolean
}

/** Elements that show suggestions, a working or draggable lamps need the whole sheet. */
interface WithSheet {
  readonly sheet: Sheet
}

/** The present state of a cell: everything that the element showing it needs. */
export type GivenView = View<Given, Outcome> & WithSheet
export type ResultView = View<Result, Outcome> & WithSheet
export type CheckView = View<Check, CheckOutcome> & WithSheet
export type NoteView = View<Note, undefined>
export type DrawingView = View<Drawing, DrawingOutcome> & WithSheet
/** Cells of all other kinds take the whole width; their elements are loaded when a sheet has one. */
export type WideCell = Exclude<Cell, Given | Result | Check | Note | Drawing>
export type WideView<C extends WideCell = WideCell> = View<C, Outcome | undefined> & WithSheet
export type CellView = GivenView | ResultView | CheckView | NoteView | DrawingView | WideView

/** One signal per cell, so that an edit updates only the elements whose cells it affects. */
export type CellSignal<V extends CellView = CellView> = Signal.State<V>

/** The part of a cell's signal that an element reads. */
export type ReadView<V extends CellView = CellView> = Pick<CellSignal<V>, 'get'>

/** A change requested by an element. The owner of the sheet makes it, or answers why it is refused. */
export interface Asked {
  readonly change: Change
  /** Consecutive changes with the same key are one undo step. */
  readonly merge?: string
  readonly refuse: (why: string) => void
}

declare global {
  interface HTMLElementEventMap {
    'change-asked': CustomEvent<Asked>
    /** The id of a cell to scroll to and focus. */
    'cell-wanted': CustomEvent<string>
  }
}

/** Scrolls to another cell and focuses it. */
export function goToCell(from: HTMLElement, id: string): void {
  from.dispatchEvent(new CustomEvent<string>('cell-wanted', { detail: id, bubbles: true, composed: true }))
}

/** Requests a change. Returns why it was refused, or undefined if it was made. */
export function requestChange(from: HTMLElement, change: Change, merge?: string): string | undefined {
  let refused: string | undefined
  const refuse = (why: string): void => {
    refused = why
  }
  const detail: Asked = { change, refuse, ...(merge === undefined ? {} : { merge }) }
  from.dispatchEvent(new CustomEvent<Asked>('change-asked', { detail, bubbles: true, composed: true }))
  return refused
}

/** What people call the cell with a name; the name itself where there is none. */
export function calledIn(sheet: Sheet, name: string): string {
  const cell = sheet.named(name)
  return cell ? labelOf(cell) : name
}

/** The label of a cell for people. */
export function labelOf(cell: Cell): string {
  if (cell.kind === 'note') return cell.text.split('\n', 1)[0] || cellWords.emptyNote
  return isNamed(cell) ? labelOfNamed(cell) : titleOf(cell)
}
