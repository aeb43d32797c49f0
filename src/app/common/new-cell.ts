import { inputsByName, kindFor } from '../../cells/forms/drawing-parts.ts'
import { type Cell, freeName, isNamed, type TableCell } from '../../worksheet/index.ts'
import { KINDS } from '../../worksheet/kinds/index.ts'
import { runFedByName } from '../../worksheet/run/inputs-by-name.ts'
import { type Addition, cellId } from './additions.ts'

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
