import { inputsByName, kindFor } from '../../cells/forms/drawing-parts.ts'
import { type Cell, freeName, isNamed, type TableCell } from '../../worksheet/index.ts'
import { KINDS } from '../../worksheet/kinds/index.ts'
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
  'frame',
  'function',
] as const
export type Addition = (typeof ADDITIONS)[number]

/** An id for a new cell, unlike any other. */
export const cellId = (): string => {
  const bytes = crypto.getRandomValues(new Uint8Array(6))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** A new cell; a drawing or a run takes its inputs from cells of the usual names. */
export function newCell(kind: Addition, cells: readonly Cell[]): Cell {
  const id = cellId()
  if (kind === 'section') return { kind: 'note', id, role: 'heading', text: '' }
  const cell = KINDS[kind].fresh({ id, cells, freeName: (base) => freeName(base, cells) }) as Cell
  if (cell.kind === 'drawing') {
    const drawing = kindFor(cells)
    return { ...cell, drawing, from: inputsByName(drawing, cells) }
  }
  if (cell.kind !== 'run') return cell
  const table = cells.find((one): one is TableCell => one.kind === 'table' && one.name === cell.of)
  return table
    ? {
        ...cell,
        from: runFedByName(
          table.columns.map(({ name }) => name),
          cells.filter(isNamed).map(({ name }) => name),
        ),
      }
    : cell
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
