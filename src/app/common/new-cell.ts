import { fedByName } from '../../cells/forms/drawing-parts.ts'
import { type Cell, freeName, isNamed } from '../../worksheet/index.ts'
import { runFedByName } from '../../worksheet/run/inputs-by-name.ts'

/** The kinds of cell that can be added. */
export const ADDITIONS = [
  'given',
  'result',
  'check',
  'note',
  'section',
  'drawing',
  'steps',
  'table',
  'range',
  'variants',
  'run',
] as const
export type Addition = (typeof ADDITIONS)[number]

export const cellId = (): string => {
  const bytes = crypto.getRandomValues(new Uint8Array(6))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** A new, empty cell. */
export function newCell(kind: Addition, cells: readonly Cell[]): Cell {
  const id = cellId()
  switch (kind) {
    case 'given':
      return { kind, id, name: freeName('given', cells), value: '' }
    case 'result':
      return { kind, id, name: freeName('result', cells), formula: '' }
    case 'check':
      return { kind, id, name: freeName('check', cells), condition: '', message: '' }
    case 'note':
      return { kind, id, text: '' }
    case 'section':
      return { kind: 'note', id, role: 'heading', text: '' }
    case 'steps':
      return { kind, id, steps: [{ text: '' }] }
    case 'table':
      return { kind, id, name: freeName('table', cells), columns: [], rows: [] }
    case 'range':
      return { kind, id, results: [] }
    case 'variants':
      return { kind, id, sets: [], results: [] }
    case 'run': {
      const of = cells.find((cell) => cell.kind === 'table')
      if (!of) return { kind, id, from: {} }
      const columns = of.columns.map(({ name }) => name)
      const names = cells.filter(isNamed).map(({ name }) => name)
      return { kind, id, of: of.name, from: runFedByName(columns, names) }
    }
    case 'drawing':
      return {
        kind,
        id,
        drawing: 'set-up',
        from: fedByName(
          'set-up',
          cells.filter(isNamed).map(({ name }) => name),
        ),
      }
  }
}

/** A copy of a cell with a free name, to be placed below the original. */
export function copyOf(cell: Cell, cells: readonly Cell[]): Cell {
  const copy = { ...cell, id: cellId() }
  return isNamed(copy) ? { ...copy, name: freeName(copy.name, cells) } : copy
}

/** The kind of cell that Alt N adds below another: the same kind, or a given. */
export const kindBelow = (cell: Cell): Addition =>
  cell.kind === 'note' && cell.role !== 'heading'
    ? 'note'
    : cell.kind === 'given' || cell.kind === 'result' || cell.kind === 'check'
      ? cell.kind
      : 'given'
