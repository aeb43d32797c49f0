import type { Cell } from '../schema/document.ts'
import { CHECK } from './check.ts'
import { DRAWING } from './drawing.ts'
import { FRAME } from './frame.ts'
import { FUNCTION } from './function.ts'
import { GIVEN } from './given.ts'
import type { CellKind } from './kind.ts'
import { NOTE } from './note.ts'
import { RANGE } from './range.ts'
import { RESULT } from './result.ts'
import { RUN } from './run.ts'
import { STEPS } from './steps.ts'
import { TABLE } from './table.ts'
import { VARIANTS } from './variants.ts'

export type Kind = Cell['kind']

/**
 * The kinds of cell by the word under `kind` in a document. A new kind is a file in this folder and a line
 * here; the type checker then asks for what shows, edits and prints it in the rooms above.
 */
export const KINDS = {
  given: GIVEN,
  result: RESULT,
  check: CHECK,
  note: NOTE,
  drawing: DRAWING,
  steps: STEPS,
  table: TABLE,
  range: RANGE,
  variants: VARIANTS,
  run: RUN,
  frame: FRAME,
  function: FUNCTION,
} satisfies { readonly [K in Kind]: CellKind<Extract<Cell, { kind: K }>> }

/** Kinds by their word; one made for a test may have more than the format knows. */
export type KindTable = Readonly<Record<string, CellKind>>

/** The record of a cell's kind. */
export const kindOf = (cell: Cell, kinds: KindTable = KINDS as KindTable): CellKind => kinds[cell.kind] as CellKind

/** A function for each kind of cell: the type of the records in the upper rooms. */
export type ByKind<A extends readonly unknown[], R> = {
  readonly [K in Kind]: (cell: Extract<Cell, { kind: K }>, ...rest: A) => R
}

/** Calls the function for the cell's kind. */
export const byKind = <A extends readonly unknown[], R>(table: ByKind<A, R>, cell: Cell, ...rest: A): R =>
  (table[cell.kind] as (cell: Cell, ...rest: A) => R)(cell, ...rest)
