import { renameAllIn, renamePartIn } from '../../language/index.ts'
import { type KindTable, kindOf } from '../kinds/index.ts'
import type { Renaming } from '../kinds/kind.ts'
import type { Cell, TableCell } from '../schema/document.ts'

/** From each name that gives way to the one that takes its place. */
export type NewNames = ReadonlyMap<string, string>

/** Another name for a part of a cell: a column of a table, an area of a frame. */
export interface NewPartName {
  readonly of: { readonly id: string; readonly name: string }
  readonly from: string
  readonly to: string
}

/** A cell with another name for a part of a cell: `card.light`, or `originals.width`, and `width` where a row of it is meant. */
export function followPart(cell: Cell, renamed: NewPartName, cells: readonly Cell[], kinds?: KindTable): Cell {
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
    private readonly part?: NewPartName,
  ) {}

  readonly one = (name: string): string => this.heard(name, this.names.get(name) ?? name)
  readonly formula = (text: string): string => {
    const { names, part } = this
    const renamed = names.size > 0 ? renameAllIn(text, names) : text
    return this.heard(text, part ? renamePartIn(renamed, part.of.name, part.from, part.to) : renamed)
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
    const { part } = this
    if (part && table?.id === part.of.id) names.set(part.from, part.to)
    const row = new Follow(names, part && columns.has(part.of.name) ? undefined : part)
    const changed = change(row)
    this.found ||= row.found
    return changed
  }
}
