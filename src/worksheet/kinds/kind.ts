import type { Cell, TableCell } from '../schema/document.ts'

/** What a new cell is made with. */
export interface NewCell {
  readonly id: string
  /** The cells of the worksheet it is added to. */
  readonly cells: readonly Cell[]
  /** A free name like the one that is asked for. */
  readonly freeName: (base: string) => string
}

/** Puts new names in the place of old ones, in the forms in which a cell refers to others. */
export interface Renaming {
  /** A name by itself. */
  readonly one: (name: string) => string
  /** A formula that names other cells. */
  readonly formula: (text: string) => string
  /** A sentence with `{formula}` in it. */
  readonly message: (text: string) => string
  /** What refers to the columns of a table by their names, and only otherwise to cells. */
  inRow<T>(table: TableCell | undefined, change: (row: Renaming) => T): T
}

/**
 * A kind of cell, as the rooms below the screen see it. What shows, edits and prints it is in records of the upper
 * rooms that are typed by `Kind`, so that a missing entry is a type error.
 *
 * Members are methods, so that the record of one kind can be called with a cell of which only `Cell` is known.
 */
export interface CellKind<C extends Cell = Cell> {
  /** What one cell of the kind is called: `Given`. */
  readonly title: string
  /** How it gets a value: read from text, by one formula, by the rows of a table, or not at all. */
  readonly computed: 'given' | 'formula' | 'table' | undefined
  /** It computes the worksheet with other givens, so any change may reach it. */
  readonly triesOthers?: boolean
  /** An empty cell of the kind; undefined where a cell of the kind cannot be added yet. */
  fresh(fresh: NewCell): C | undefined
  /** The formula that computes it, where there is one. */
  formula?(cell: C): string
  /** All the formulas it computes with, its own and others. */
  formulas?(cell: C): readonly string[]
  /** The formulas it shows or prepares besides those it computes with: in messages, in drawings. */
  shown?(cell: C): readonly string[]
  /** The names it lists, outside any formula. */
  listed?(cell: C): readonly string[]
  /** The givens it changes, varies or fills in, which must stay givens. */
  sets?(cell: C): readonly string[]
  /** The cell with other names in the place of some, wherever it refers to cells of the worksheet. */
  renamed(cell: C, renaming: Renaming, cells: readonly Cell[]): C
}

type Texts = Readonly<Record<string, string>>

/** Texts by key, each changed: names in a record, or the formulas that feed inputs. */
export const mapValues = (texts: Texts, change: (text: string) => string): Record<string, string> =>
  Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, change(text)]))

/** Texts by name, each under its new name. */
export const mapKeys = (texts: Texts, change: (name: string) => string): Record<string, string> =>
  Object.fromEntries(Object.entries(texts).map(([name, text]) => [change(name), text]))
