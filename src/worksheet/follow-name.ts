import { renameIn } from '../language/index.ts'
import type { Cell, Schedule } from './document.ts'

/**
 * A cell with another name in the place of one, wherever it stands for a cell of the sheet: in formulas, in braces of
 * messages, in lists of names. The same object where it does not occur.
 */
export function followName(cell: Cell, from: string, to: string, cells: readonly Cell[]): Cell {
  const next = followed(cell, new Names(from, to), cells)
  return next === cell || JSON.stringify(next) === JSON.stringify(cell) ? cell : next
}

class Names {
  constructor(
    readonly from: string,
    private readonly to: string,
  ) {}

  readonly one = (name: string): string => (name === this.from ? this.to : name)
  readonly formula = (text: string): string => renameIn(text, this.from, this.to)
  readonly message = (text: string): string =>
    text.replace(/\{([^{}]*)\}/g, (_, inside: string) => `{${this.formula(inside)}}`)
  readonly formulas = (texts: Readonly<Record<string, string>>): Record<string, string> =>
    Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, this.formula(text)]))
}

function followed(cell: Cell, names: Names, cells: readonly Cell[]): Cell {
  const { one, formula, message, formulas } = names
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
        ...(cell.holds === undefined ? {} : { holds: message(cell.holds) }),
      }
    case 'note':
      return cell
    case 'drawing':
      return { ...cell, from: formulas(cell.from), ...(cell.moves ? { moves: cell.moves.map(one) } : {}) }
    case 'steps':
      if (!cell.steps.some(({ reading }) => reading === names.from)) return cell
      return {
        ...cell,
        steps: cell.steps.map((step) => (step.reading === undefined ? step : { ...step, reading: one(step.reading) })),
      }
    case 'schedule':
      // In a row the column of that name is meant, not the cell.
      return hasColumn(cell, names.from) ? cell : { ...cell, columns: cell.columns.map((at) => column(at, names)) }
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
      const of = cells.find((other): other is Schedule => other.kind === 'schedule' && other.name === cell.of)
      return {
        ...cell,
        ...(cell.of === undefined ? {} : { of: one(cell.of) }),
        from: of && hasColumn(of, names.from) ? cell.from : formulas(cell.from),
      }
    }
  }
}

const hasColumn = ({ columns }: Schedule, name: string): boolean => columns.some((column) => column.name === name)

type Column = Schedule['columns'][number]

const column = (at: Column, { formula }: Names): Column => ({
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
