import { labelOf } from '../../cells/shared/cell-view.ts'
import { STATE_LABELS } from '../../cells/shared/words.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import { drawRangeMap } from '../../drawings/range/range-map.ts'
import { drawRange } from '../../drawings/range/range-plot.ts'
import type { RangeTable } from '../../worksheet/analysis/followed.ts'
import { type RangeGrid, rangeGrid, rangeTable } from '../../worksheet/analysis/range-table.ts'
import { RangeInputError } from '../../worksheet/analysis/range-values.ts'
import { type Compared, variantsAsTexts } from '../../worksheet/analysis/variants-table.ts'
import { labelOf as columnOf } from '../../worksheet/document/label.ts'
import type { Range, Sheet, Variants } from '../../worksheet/index.ts'
import { paperWords as words } from './words.ts'

/** The width of a plot on paper, in CSS px; drawings have the same. */
const PLOT_WIDTH = 400

const cellsOf = (tag: 'th' | 'td', texts: readonly (string | Node)[]): Node[] =>
  texts.map((text, at) => element(at === 0 ? 'th' : tag, at === 0 ? { scope: 'row' } : {}, text))

/** Figures in rows and columns under a title. */
function columns(title: string, heads: readonly string[], rows: readonly (readonly (string | Node)[])[]): Node {
  return element(
    'div',
    { class: 'columns' },
    element('p', {}, element('b', {}, title)),
    element(
      'table',
      {},
      element('thead', {}, element('tr', {}, ...heads.map((text) => element('th', { scope: 'col' }, text)))),
      element('tbody', {}, ...rows.map((row) => element('tr', {}, ...cellsOf('td', row)))),
    ),
  )
}

/** The plot and the table of a range, or a line about why it has none. */
export function rangeOnPaper(sheet: Sheet, cell: Range): Node[] {
  let table: RangeTable
  try {
    if (cell.second) return gridOnPaper(rangeGrid(sheet, cell), cell)
    table = rangeTable(sheet, cell)
  } catch (error) {
    if (!(error instanceof RangeInputError)) throw error
    return [element('p', { class: 'small' }, `${labelOf(cell)}: ${error.message}`)]
  }
  const { varied, shown, followed, presentAt, values } = table
  const title = cell.title?.trim() || words.overRange(columnOf(varied))
  const { node, width, height } = drawRange(table, { width: PLOT_WIDTH, title })
  const figure = element('figure', {}, { ...node, attributes: { ...node.attributes, width, height } })
  // The rows of plotted columns are on paper with their table.
  if (values.length === 0) return [figure]
  return [
    figure,
    columns(
      title,
      [columnOf(varied), ...followed.map((one) => columnOf(one.cell))],
      shown.map((text, at) => [
        at === presentAt ? words.now(text) : text,
        ...followed.map((one) => one.shown[at] as string),
      ]),
    ),
  ]
}

/** The map and the table of a result over two givens. */
function gridOnPaper(grid: RangeGrid, cell: Range): Node[] {
  const drawn = drawRangeMap(grid, { width: PLOT_WIDTH, title: cell.title?.trim() || undefined })
  const { node, width, height, title, table } = drawn
  return [
    element('figure', {}, { ...node, attributes: { ...node.attributes, width, height } }),
    columns(title, table?.head ?? [], table?.rows ?? []),
  ]
}

const said = ({ shown, state, difference, why }: Compared): string =>
  [state ? STATE_LABELS[state] : shown.replaceAll('_', ' '), difference, state ? '' : (why ?? '')]
    .filter(Boolean)
    .join(', ')

/** The variants of a sheet side by side, with their results. */
export function variantsOnPaper(sheet: Sheet, cell: Variants): Node {
  const { heads, rows } = variantsAsTexts(sheet, cell, said)
  return columns(labelOf(cell), heads, rows)
}
