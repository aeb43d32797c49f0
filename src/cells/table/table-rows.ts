import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Node } from '../../worksheet/engine/node.ts'
import type { OmittedRow } from '../../worksheet/engine/outcome.ts'
import type { TableCell } from '../../worksheet/index.ts'
import { columnLabel } from '../../worksheet/table/columns.ts'
import { type FooterFigure, filteredRows, footerOf, groupsOf, type RowGroup } from '../../worksheet/table/footer.ts'
import { hasFormula, type RowReading, rowReader } from '../../worksheet/table/read-table.ts'
import { omittedRows, rowsComputed, valueAt } from '../../worksheet/table/row-status.ts'
import type { RowsComputed } from '../../worksheet/table/rows.ts'
import { tableOf } from '../../worksheet/table/table-node.ts'
import type { WideView } from '../shared/cell-view.ts'
import { unitSuffix } from '../shared/unit-suffix.ts'
import { rowsToDraw, type Viewport } from './row-window.ts'
import { computedText, isNumeric, tableField, widthOf } from './table-fields.ts'
import { tableWords } from './words.ts'

/** A taller sticky footer would cover the rows on a small screen. */
const MOST_HELD = 2

/** Everything shown of a table, computed once per state. */
export interface TableState {
  readonly cell: TableCell
  readonly node: Node | undefined
  readonly computed: RowsComputed | undefined
  readonly leftOut: readonly OmittedRow[]
  readonly groups: readonly RowGroup[]
  /** The rows a filter lets through; undefined where there is none. */
  readonly shown: readonly number[] | undefined
  readonly foot: readonly (readonly FooterFigure[])[]
  readonly read: (row: readonly string[]) => RowReading
  readonly labels: readonly string[]
}

/** The visible part of the table, the present field, and the effect of typing. */
export interface ActiveField {
  readonly viewport: Viewport
  readonly row: number
  readonly column: number
  readonly put: (row: number, column: number, text: string) => void
}

/** What a table shows: its rows in order, those left out by the filter, groups and totals. */
export function tableStateOf({ cell, sheet }: WideView<TableCell>, filter: string): TableState {
  const node = sheet.engine.node(cell.id)
  return {
    cell,
    node,
    computed: node && rowsComputed(sheet.engine, node),
    leftOut: node ? omittedRows(sheet.engine, node) : [],
    groups: node ? groupsOf(sheet.engine, node) : [],
    shown: node && filteredRows(sheet.engine, node, filter),
    foot: node ? footerOf(sheet.engine, node) : [],
    read: rowReader(cell.columns).read,
    labels: cell.columns.map(columnLabel),
  }
}

/** By which column the rows were last sorted. */
export interface Sorted {
  readonly column: number
  readonly descending: boolean
}

const longestWord = (text: string): number => Math.max(...text.split(/\s/).map(({ length }) => length))

interface HeadActs {
  readonly sorted: Sorted | undefined
  readonly sort: (column: number) => void
}

/** The headings of the columns with their units and widths; each sorts the rows. */
export function tableHead({ cell, labels }: TableState, { sorted, sort }: HeadActs): TemplateResult {
  return html`
    <colgroup>
      <col class="number-wide">
      ${cell.columns.map((column, at) => html`<col class=${widthOf(column, hasFormula(column))} .style=${`--word: ${longestWord(labels[at] as string)}`}>`)}
    </colgroup>
    <thead>
      <tr aria-rowindex="1">
        <th scope="col" class="number"><span class="unseen">${tableWords.rowHead}</span></th>
        ${cell.columns.map((column, at) => {
          const unit = unitSuffix(column.unit)
          const toTheRight = isNumeric(column) ? 'end' : ''
          const order = sorted?.column === at ? (sorted.descending ? 'descending' : 'ascending') : nothing
          return html`<th scope="col" class=${toTheRight} aria-sort=${order}><button type="button" class="word sort says" aria-label=${tableWords.sortBy(labels[at] as string)} @click=${() => sort(at)}>${labels[at]}</button>${unit ? html` <span class="unit quiet">${unit}</span>` : nothing}</th>`
        })}
      </tr>
    </thead>
  `
}

/** The heading of a column with its unit, shown beside its field where the table is a list of rows. */
function headingOf({ cell, labels }: TableState, at: number): string {
  const unit = unitSuffix(cell.columns[at]?.unit)
  return unit ? `${labels[at]}, ${unit}` : (labels[at] ?? '')
}

function drawRow(table: TableState, row: number, out: ReadonlySet<number>, active: ActiveField): TemplateResult {
  const { cell, node, computed, read, labels } = table
  const fields = cell.rows[row] as readonly string[]
  const { problems } = read(fields)
  const isOut = out.has(row)
  return html`
    <tr aria-rowindex=${row + 2} class=${row === active.row ? 'present' : ''}>
      <th scope="row" class=${isOut ? 'out' : ''}>
        ${row + 1}${isOut ? html`<span class="word-out">${tableWords.leftOut}</span>` : nothing}
      </th>
      ${cell.columns.map((column, at) => {
        if (hasFormula(column)) {
          const compiled = tableOf(node)?.columns[at]
          const value = node && valueAt(node, computed, row, at)
          const text = computedText(value, compiled?.type, compiled?.unit)
          const toTheRight = compiled?.type?.kind === 'number' ? 'end' : ''
          return html`<td class="worked ${toTheRight}" data-label=${headingOf(table, at)}>${text || (problems.length > 0 || isOut ? '–' : '')}</td>`
        }
        const found = problems.find((one) => one.column === at)
        const inActiveRow = row === active.row
        return html`<td data-label=${headingOf(table, at)}>${tableField({
          column,
          label: labels[at] as string,
          row,
          at,
          text: fields[at] ?? '',
          problem: found,
          inActiveRow,
          described: found && !found.empty && inActiveRow && at === active.column ? 'problem' : '',
          put: (text) => active.put(row, at, text),
        })}</td>`
      })}
    </tr>
  `
}

/** The rows in view, with empty space for the others. */
export function tableRows(table: TableState, active: ActiveField): unknown {
  const { cell, leftOut, shown } = table
  const out = new Set(leftOut.map(({ row }) => row))
  const count = shown?.length ?? cell.rows.length
  const present = shown ? shown.indexOf(active.row) : active.row
  const drawn: { readonly key: string; readonly row?: number; readonly gap: number }[] = []
  let next = 0
  const pad = (until: number): void => {
    if (until > next)
      drawn.push({
        key: `gap ${drawn.length === 0 ? 'above' : until === count ? 'below' : 'between'}`,
        gap: until - next,
      })
  }
  for (const place of rowsToDraw(count, active.viewport, present)) {
    pad(place)
    const row = shown?.[place] ?? place
    drawn.push({ key: `${row}`, row, gap: 0 })
    next = place + 1
  }
  pad(count)
  return repeat(
    drawn,
    ({ key }) => key,
    ({ row, gap }) =>
      row === undefined
        ? html`<tr class="pad" aria-hidden="true"><td data-rows=${gap} colspan=${cell.columns.length + 1}></td></tr>`
        : drawRow(table, row, out, active),
  )
}

/** The footer figures of the columns. */
export function tableFoot(table: TableState): TemplateResult | typeof nothing {
  const { cell, foot } = table
  const lines = Math.max(0, ...foot.map(({ length }) => length))
  if (lines === 0) return nothing
  return html`
    <tfoot class=${lines <= MOST_HELD ? 'held' : ''}>
      ${Array.from(
        { length: lines },
        (_, line) => html`
          <tr>
            <th scope="row"><span class="unseen">${tableWords.columnFooter}</span></th>
            ${cell.columns.map((_, at) => {
              const one = foot[at]?.[line]
              if (!one) return html`<td></td>`
              const message = one.diagnostics[0]?.message
              return html`<td data-label=${table.labels[at]}>
                <span class="small quiet">${one.words}${one.where ? tableWords.where(one.where) : ''}</span>
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
