import type { Type } from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import type { Sheet } from '../../worksheet/editing/sheet.ts'
import type { Column, TableCell } from '../../worksheet/schema/document.ts'
import { type WrittenColumn, writtenColumns } from '../../worksheet/table/export.ts'
import { hasFormula } from '../../worksheet/table/read-table.ts'
import { WAYS } from './literal.ts'

const unitText = (unit: DisplayUnit | undefined, type: Type | undefined): string | undefined => {
  const notation = unit?.notation ?? (type?.kind === 'number' ? type.notation : undefined)
  return notation ? WAYS[notation] : unit?.symbol
}

/** What takes a column's figures as they are typed. */
function typedColumn({ formula: _, entry: __, unit: ___, ...column }: Column, written: WrittenColumn): Column {
  const { type, unit, texts } = written
  if (type?.kind === 'yes or no') return { ...column, entry: 'tick' }
  if (type?.kind !== 'number' || texts.some((text) => /infinity/.test(text))) return { ...column, entry: 'text' }
  const own = unitText(unit, type)
  return own ? { ...column, unit: own } : column
}

/** A table whose columns are typed, not worked out; a row that had no figure still has none. */
export function tableFigures(sheet: Sheet, cell: TableCell): TableCell {
  const node = sheet.engine.node(cell.id)
  if (!node || !cell.columns.some(hasFormula)) return cell
  const written = writtenColumns(sheet.engine, node)
  return {
    ...cell,
    columns: cell.columns.map((column, at) =>
      hasFormula(column) ? typedColumn(column, written[at] as WrittenColumn) : column,
    ),
    rows: cell.rows.map((row, at) =>
      cell.columns.map((column, c) => (hasFormula(column) ? (written[c]?.texts[at] ?? '') : (row[c] ?? ''))),
    ),
  }
}
