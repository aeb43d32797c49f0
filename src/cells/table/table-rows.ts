import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Node } from '../../worksheet/engine/node.ts'
import type { OmittedRow } from '../../worksheet/engine/outcome.ts'
import type { TableCell } from '../../worksheet/index.ts'
import { columnLabel } from '../../worksheet/table/columns.ts'
import { type FooterFigure, footerOf } from '../../worksheet/table/footer.ts'
import { hasFormula, type RowReading, rowReader } from '../../worksheet/table/read-table.ts'
import { omittedRows, rowsComputed, valueAt } from '../../worksheet/table/row-status.ts'
import type { RowsComputed } from '../../worksheet/table/rows.ts'
import { tableOf } from '../../worksheet/table/table-node.ts'
import type { WideView } from '../shared/cell-view.ts'
import { unitSuffix } from '../shared/unit-suffix.ts'
import { rowsToDraw, type Viewport } from './row-window.ts'
import { isNumeric, tableField, widthOf, workedOut } from './table-fields.ts'

/** A foot of more lines would cover the rows of a small screen. */
const MOST_HELD = 2

/** What is drawn of a table, worked out once for each state of it. */
export interface TableState {
  readonly cell: TableCell
  readonly node: Node | undefined
  readonly computed: RowsComputed | undefined
  readonly leftOut: readonly OmittedRow[]
  readonly foot: readonly (readonly FooterFigure[])[]
  readonly read: (row: readonly string[]) => RowReading
  readonly labels: readonly string[]
}

/** Where one is in the table, and what typing does. */
export interface ActiveField {
  readonly viewport: Viewport
  readonly row: number
  readonly column: number
  readonly put: (row: number, column: number, text: string) => void
}

export function tableStateOf({ cell, sheet }: WideView<TableCell>): TableState {
  const node = sheet.engine.node(cell.id)
  return {
    cell,
    node,
    computed: node && rowsComputed(sheet.engine, node),
    leftOut: node ? omittedRows(sheet.engine, node) : [],
    foot: node ? footerOf(sheet.engine, node) : [],
    read: rowReader(cell.columns).read,
    labels: cell.columns.map(columnLabel),
  }
}

/** The heading of each column, with its unit, and how wide it is. */
export function tableHead({ cell, labels }: TableState): TemplateResult {
  return html`
    <colgroup>
      <col class="number">
      ${cell.columns.map((column) => html`<col class=${widthOf(column, hasFormula(column))}>`)}
    </colgroup>
    <thead>
      <tr aria-rowindex="1">
        <th scope="col" class="number"><span class="unseen">Row</span></th>
        ${cell.columns.map((column, at) => {
          const unit = unitSuffix(column.unit)
          const toTheRight = isNumeric(column) ? 'end' : ''
          return html`<th scope="col" class=${toTheRight}>${labels[at]}${unit ? html` <span class="unit quiet">${unit}</span>` : nothing}</th>`
        })}
      </tr>
    </thead>
  `
}

function drawRow(standing: TableState, row: number, out: ReadonlySet<number>, hand: ActiveField): TemplateResult {
  const { cell, node, computed, read, labels } = standing
  const fields = cell.rows[row] as readonly string[]
  const { troubles } = read(fields)
  const isOut = out.has(row)
  return html`
    <tr aria-rowindex=${row + 2}>
      <th scope="row" class=${isOut ? 'out' : ''}>
        ${row + 1}${isOut ? html`<span class="word-out">left out</span>` : nothing}
      </th>
      ${cell.columns.map((column, at) => {
        if (hasFormula(column)) {
          const meaning = tableOf(node)?.columns[at]
          const value = node && valueAt(node, computed, row, at)
          const text = workedOut(value, meaning?.type, meaning?.unit)
          const toTheRight = meaning?.type?.kind === 'number' ? 'end' : ''
          return html`<td class="worked ${toTheRight}">${text || (troubles.length > 0 || isOut ? '–' : '')}</td>`
        }
        const found = troubles.find((one) => one.column === at)
        const inHand = row === hand.row
        return html`<td>${tableField({
          column,
          label: labels[at] as string,
          row,
          at,
          text: fields[at] ?? '',
          trouble: found,
          inHand,
          described: found && !found.empty && inHand && at === hand.column ? 'trouble' : '',
          put: (text) => hand.put(row, at, text),
        })}</td>`
      })}
    </tr>
  `
}

/** The rows in view, with room kept for the others. */
export function tableRows(standing: TableState, hand: ActiveField): unknown {
  const { cell, leftOut } = standing
  const out = new Set(leftOut.map(({ row }) => row))
  const count = cell.rows.length
  const drawn: { readonly key: string; readonly row?: number; readonly gap: number }[] = []
  let next = 0
  const pad = (until: number): void => {
    if (until > next)
      drawn.push({
        key: `gap ${drawn.length === 0 ? 'above' : until === count ? 'below' : 'between'}`,
        gap: until - next,
      })
  }
  for (const row of rowsToDraw(count, hand.viewport, hand.row)) {
    pad(row)
    drawn.push({ key: `${row}`, row, gap: 0 })
    next = row + 1
  }
  pad(count)
  return repeat(
    drawn,
    ({ key }) => key,
    ({ row, gap }) =>
      row === undefined
        ? html`<tr class="pad" aria-hidden="true"><td data-rows=${gap} colspan=${cell.columns.length + 1}></td></tr>`
        : drawRow(standing, row, out, hand),
  )
}

/** The figures under the columns. */
export function tableFoot({ cell, foot }: TableState): TemplateResult | typeof nothing {
  const lines = Math.max(0, ...foot.map(({ length }) => length))
  if (lines === 0) return nothing
  return html`
    <tfoot class=${lines <= MOST_HELD ? 'held' : ''}>
      ${Array.from(
        { length: lines },
        (_, line) => html`
          <tr>
            <th scope="row"><span class="unseen">Under the columns</span></th>
            ${cell.columns.map((_, at) => {
              const one = foot[at]?.[line]
              if (!one) return html`<td></td>`
              const message = one.diagnostics[0]?.message
              return html`<td>
                <span class="small quiet">${one.words}${one.where ? ` where ${one.where}` : ''}</span>
                <b>${one.shown ?? '–'}</b>
                ${message ? html`<span class="small">${message}</span>` : nothing}
              </td>`
            })}
          </tr>
        `,
      )}
    </tfoot>
  `
}
