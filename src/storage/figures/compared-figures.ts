import { rangeGrid, rangeTable } from '../../worksheet/analysis/range-table.ts'
import { RangeInputError } from '../../worksheet/analysis/range-values.ts'
import { type Compared, variantsAsTexts } from '../../worksheet/analysis/variants-table.ts'
import { overRange, overTwo, states } from '../../worksheet/analysis/words.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { freeName } from '../../worksheet/document/names.ts'
import type { Sheet } from '../../worksheet/editing/sheet.ts'
import { KIND_TITLES } from '../../worksheet/format/words.ts'
import type { Cell, Range, TableCell, Variants } from '../../worksheet/schema/document.ts'
import { FIGURES_WORDS as WORDS } from './words.ts'

/** Figures as they were, as a table of texts: nothing in it is computed. */
export function asTableCell(
  sheet: Sheet,
  { id }: Cell,
  label: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): TableCell {
  return {
    kind: 'table',
    id,
    // A sheet may have several.
    name: freeName(`figures_${sheet.cells.findIndex((one) => one.id === id) + 1}`, sheet.cells),
    label,
    columns: heads.map((head, at) => ({ name: `column_${at + 1}`, label: head, entry: 'text', may_be_empty: true })),
    rows: rows.map((row) => [...row]),
  }
}

/** A range as it was. */
export function rangeFigures(sheet: Sheet, cell: Range): Cell {
  try {
    if (cell.second) {
      const { across, up, result, shown } = rangeGrid(sheet, cell)
      const [one, other] = [labelOf(across.varied), labelOf(up.varied)]
      return asTableCell(
        sheet,
        cell,
        cell.title?.trim() || overTwo(labelOf(result.cell), one, other),
        [other, ...across.shown],
        up.shown.map((text, row) => [text, ...(shown[row] ?? [])]),
      )
    }
    const { varied, shown, followed, values } = rangeTable(sheet, cell)
    // The rows of plotted columns travel with their table.
    if (values.length === 0)
      return { kind: 'note', id: cell.id, text: cell.title?.trim() || overRange(labelOf(varied)) }
    return asTableCell(
      sheet,
      cell,
      cell.title?.trim() || overRange(labelOf(varied)),
      [labelOf(varied), ...followed.map((one) => labelOf(one.cell))],
      shown.map((text, at) => [text, ...followed.map((one) => one.shown[at] as string)]),
    )
  } catch (error) {
    if (!(error instanceof RangeInputError)) throw error
    return { kind: 'note', id: cell.id, text: cell.title?.trim() || WORDS.emptyRange }
  }
}

const said = ({ shown, state, difference }: Compared): string =>
  state ? states[state] : [shown, difference].filter(Boolean).join(', ')

/** Variants as they were. */
export function variantsFigures(sheet: Sheet, cell: Variants): Cell {
  const { heads, rows } = variantsAsTexts(sheet, cell, said)
  return asTableCell(sheet, cell, cell.title?.trim() || KIND_TITLES.variants, heads, rows)
}
