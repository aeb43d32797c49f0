import { isExampleTable, provenanceOf } from '../analysis/provenance.ts'
import type { Cell, Worksheet } from '../schema/document.ts'

/** A job's sheet for the user's own figures: what the example filled in is empty, usual values stay. */
export function withoutExample(worksheet: Worksheet): Worksheet {
  const { job: _, ...rest } = worksheet
  return { ...rest, cells: worksheet.cells.map(emptied) }
}

function emptied(cell: Cell): Cell {
  if (cell.kind === 'given' && provenanceOf(cell) === 'example') {
    const { from: _, piece: _piece, ...given } = cell
    return { ...given, value: '' }
  }
  if (cell.kind !== 'table' || !isExampleTable(cell)) return cell
  const { from: _, ...table } = cell
  return { ...table, rows: [] } as Cell
}
