import { renameAllIn, renamePartIn } from '../../language/index.ts'
import { type KindTable, kindOf } from '../kinds/index.ts'
import type { Renaming } from '../kinds/kind.ts'
import type { Cell, TableCell } from '../schema/document.ts'

/** From each name that gives way to the one that takes its place. */
export type NewNames = ReadonlyMap<string, string>

/** A column of a table that bears another name. */
export interface NewColumnName {
  readonly table: TableCell
  readonly from: string
  readonly to: string
}

/** A cell with another name for a column of a table: `originals.width`, and `width` where a row of it is meant. */
export function followColumn(cell: Cell, renamed: NewColumnName, cells: readonly Cell[], kinds?: KindTable): Cell {
  const follow = new Follow(new Map(), renamed)
  const next = kindOf(cell, kinds).renamed(cell, follow, cells)
  return follow.found ? next : cell
}

/**
 * A cell with other names in the place of some, wherever they mean cells of the sheet: in formulas, in braces of
 * messages, in lists of names. The same object where none occurs.
 */
export function followNames(cell: Cell, names: NewNames, cells: readonly Cell[], kinds?: KindTable): Cell {
  const follow = new Follow(names)
  const next = kindOf(cell, kinds).renamed(cell, follow, cells)
  return follow.found ? next : cell
}

class Follow implements Renaming {
  /** Whether any of the names has occurred. */
  found = false

  constructor(
    private readonly names: NewNames,
    private readonly column?: NewColumnName,
  ) {}

  readonly one = (name: string): string => this.heard(name, this.names.get(name) ?? name)
  readonly formula = (text: string): string => {
    const { names, column } = this
    const renamed = names.size > 0 ? renameAllIn(text, names) : text
    return this.heard(text, column ? renamePartIn(renamed, column.table.name, column.from, column.to) : renamed)
  }
  readonly message = (text: string): string =>
    text.replace(/\{([^{}]*)\}/g, (_, inside: string) => `{${this.formula(inside)}}`)

  private heard(before: string, after: string): string {
    this.found ||= before !== after
    return after
  }

  /** Changes what is read in a row of a table, where its columns are meant by their names, not cells. */
  inRow<T>(table: TableCell | undefined, change: (row: Follow) => T): T {
    const columns = new Set(table?.columns.map(({ name }) => name))
    const names = new Map([...this.names].filter(([from]) => !columns.has(from)))
    const { column } = this
    if (column && table?.id === column.table.id) names.set(column.from, column.to)
    const row = new Follow(names, column && columns.has(column.table.name) ? undefined : column)
    const changed = change(row)
    this.found ||= row.found
    return changed
  }
}
