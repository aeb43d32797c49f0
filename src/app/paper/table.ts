import { labelOf } from '../../cells/shared/cell-view.ts'
import { unitSuffix } from '../../cells/shared/unit-suffix.ts'
import { computedText } from '../../cells/table/table-fields.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import type { Sheet, TableCell } from '../../worksheet/index.ts'
import { columnLabel } from '../../worksheet/table/columns.ts'
import { footerOf } from '../../worksheet/table/footer.ts'
import { hasFormula } from '../../worksheet/table/read-table.ts'
import { omittedRows, omittedRowsText, rowsComputed, valueAt } from '../../worksheet/table/row-status.ts'
import { tableOf } from '../../worksheet/table/table-node.ts'
import { paperWords as words } from './words.ts'

/** More columns than this are set smaller. */
const MANY = 8

const small = (text: string): Node => element('span', { class: 'small' }, text)

/** A table on paper: its heading again on each page, no row cut in two, the foot once, at the end. */
export function tableOnPaper(sheet: Sheet, cell: TableCell): Node[] {
  const title = element('p', {}, element('b', {}, labelOf(cell)))
  const node = sheet.engine.node(cell.id)
  if (!node || cell.columns.length === 0) return [element('div', { class: 'note' }, title)]
  const computed = rowsComputed(sheet.engine, node)
  const leftOut = omittedRows(sheet.engine, node)
  const out = new Set(leftOut.map(({ row }) => row))
  const types = cell.columns.map((_, at) => tableOf(node)?.columns[at]?.type)
  const side = (at: number): Record<string, string> => (types[at]?.kind === 'number' ? { class: 'end' } : {})
  const field = (row: number, at: number): string => {
    const column = cell.columns[at]
    const value = valueAt(node, computed, row, at)
    const usual = value === undefined ? '' : (column?.default ?? '')
    const typed = (cell.rows[row]?.[at] ?? '').trim() || usual
    if (column && hasFormula(column)) return computedText(value, types[at], tableOf(node)?.columns[at]?.unit)
    return column?.entry === 'tick' && value !== undefined ? (value ? words.yes : '') : typed
  }
  const heads = cell.columns.map((column, at) => {
    const unit = unitSuffix(column.unit)
    return element('th', { scope: 'col', ...side(at) }, columnLabel(column), ...(unit ? [small(unit)] : []))
  })
  const rows = cell.rows.map((_, row) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, `${row + 1}`, ...(out.has(row) ? [small(words.leftOut)] : [])),
      ...cell.columns.map((_, at) => element('td', side(at), field(row, at))),
    ),
  )
  const many = cell.columns.length > MANY ? ' many' : ''
  return [
    element('div', { class: 'note' }, title, ...whyNot(sheet, cell).map((text) => element('p', {}, small(text)))),
    element(
      'table',
      { class: `table${many}` },
      element('thead', {}, element('tr', {}, element('th', { scope: 'col' }, ''), ...heads)),
      element('tbody', { class: 'body' }, ...rows),
      ...footRows(sheet, cell),
    ),
    ...(leftOut.length > 0 ? [element('p', {}, small(omittedRowsText(node, leftOut)))] : []),
  ]
}

/** Why there are no figures. */
function whyNot(sheet: Sheet, { id }: TableCell): string[] {
  const outcome = sheet.outcome(id)
  if (outcome.state === 'error') return outcome.diagnostics.map(({ message }) => words.notComputed(message))
  return outcome.state === 'waiting' && outcome.on.length > 0 ? [words.formulasNeed(outcome.on)] : []
}

function footRows(sheet: Sheet, cell: TableCell): Node[] {
  const node = sheet.engine.node(cell.id)
  const foot = node ? footerOf(sheet.engine, node) : []
  const lines = Math.max(0, ...foot.map(({ length }) => length))
  if (lines === 0) return []
  const rows = Array.from({ length: lines }, (_, line) =>
    element(
      'tr',
      {},
      element('th', {}, ''),
      ...cell.columns.map((_, at) => {
        const one = foot[at]?.[line]
        if (!one) return element('td', {})
        return element(
          'td',
          { class: 'end' },
          small(words.footWhere(one.words, one.where ?? '')),
          element('b', {}, one.shown ?? '–'),
        )
      }),
    ),
  )
  return [element('tbody', { class: 'foot' }, ...rows)]
}
