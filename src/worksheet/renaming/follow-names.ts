import { renameAllIn, renamePartIn } from '../../language/index.ts'
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
export function followColumn(cell: Cell, renamed: NewColumnName, cells: readonly Cell[]): Cell {
  const follow = new Follow(new Map(), renamed)
  const next = followed(cell, follow, cells)
  return follow.found ? next : cell
}

/**
 * A cell with other names in the place of some, wherever they stand for cells of the sheet: in formulas, in braces of
 * messages, in lists of names. The same object where none occurs.
 */
export function followNames(cell: Cell, names: NewNames, cells: readonly Cell[]): Cell {
  const follow = new Follow(names)
  const next = followed(cell, follow, cells)
  return follow.found ? next : cell
}

class Follow {
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

  /** Changes what stands in a row of a table, where its columns are meant by their names, not cells. */
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

const formulas = (texts: Readonly<Record<string, string>>, { formula }: Follow): Record<string, string> =>
  Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, formula(text)]))

function followed(cell: Cell, follow: Follow, cells: readonly Cell[]): Cell {
  const { one, formula, message } = follow
  switch (cell.kind) {
    case 'given':
      if (!cell.fills) return cell
      return { ...cell, fills: Object.fromEntries(Object.entries(cell.fills).map(([part, name]) => [part, one(name)])) }
    case 'result':
      return { ...cell, formula: formula(cell.formula) }
    case 'check':
      return {
        ...cell,
        condition: formula(cell.condition),
        message: message(cell.message),
        ...(cell.passes === undefined ? {} : { passes: message(cell.passes) }),
      }
    case 'note':
    case 'frame':
    case 'function':
      return cell
    case 'drawing':
      return { ...cell, from: formulas(cell.from, follow), ...(cell.moves ? { moves: cell.moves.map(one) } : {}) }
    case 'steps':
      return {
        ...cell,
        steps: cell.steps.map((step) => (step.reading === undefined ? step : { ...step, reading: one(step.reading) })),
      }
    case 'table':
      return { ...cell, columns: follow.inRow(cell, (row) => cell.columns.map((at) => column(at, row))) }
    case 'range':
      return { ...cell, ...(cell.of === undefined ? {} : { of: one(cell.of) }), results: cell.results.map(one) }
    case 'variants':
      return {
        ...cell,
        sets: cell.sets.map((set) => ({
          ...set,
          values: Object.fromEntries(Object.entries(set.values).map(([name, text]) => [one(name), text])),
        })),
        results: cell.results.map(one),
      }
    case 'run': {
      const of = cells.find((other): other is TableCell => other.kind === 'table' && other.name === cell.of)
      return {
        ...cell,
        ...(cell.of === undefined ? {} : { of: one(cell.of) }),
        from: follow.inRow(of, (row) => formulas(cell.from, row)),
      }
    }
  }
}

type Column = TableCell['columns'][number]

const column = (at: Column, { formula }: Follow): Column => ({
  ...at,
  ...(at.formula === undefined ? {} : { formula: formula(at.formula) }),
  ...(at.foot === undefined
    ? {}
    : {
        foot: at.foot.map((figure) =>
          figure.where === undefined ? figure : { ...figure, where: formula(figure.where) },
        ),
      }),
})
