import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { MAX_ROWS } from '../../worksheet/format/format.ts'
import type { TableCell } from '../../worksheet/index.ts'
import { hasFormula } from '../../worksheet/table/read-table.ts'
import { rowCountText } from '../../worksheet/table/row-status.ts'
import { labelledStyle } from '../fields/labelled.ts'
import { type CellSignal, labelOf, requestChange, type WideView } from '../shared/cell-view.ts'
import { errorMessageStyle } from '../shared/error-message.ts'
import { headed } from '../style/headed.ts'
import { field, shared } from '../style/styles.ts'
import { omittedRowsList } from './omitted-rows.ts'
import { grouped, withField, withFilledDown, withoutRow, withRow, withRowMoved } from './row-edits.ts'
import { fieldError, rowActs, tableErrors } from './row-messages.ts'
import { ROW_HEIGHT, scrollFor, type Viewport } from './row-window.ts'
import { tableGroups } from './table-groups.ts'
import { type RowAct, type Step, stepOf } from './table-keys.ts'
import { tableNarrowStyle } from './table-narrow-style.ts'
import { type Sorted, type TableState, tableFoot, tableHead, tableRows, tableStateOf } from './table-rows.ts'
import { tableStyle } from './table-style.ts'
import { tableTools } from './table-tools.ts'
import { tableWords } from './words.ts'

let acts = 0

/** A table of originals, readings or frames, filled in row by row. */
@customElement('table-cell')
export class TableCellView extends SignalWatcher(LitElement) {
  static override styles = [shared, field, labelledStyle, errorMessageStyle, headed, tableStyle, tableNarrowStyle]

  @property({ attribute: false }) view!: CellSignal<WideView<TableCell>>
  @state() private viewport: Viewport = { top: 0, height: 600 }
  /** The row and column of the present field. */
  @state() private row = 0
  @state() private column = 0
  @state() private message = ''
  /** What the rows shown have in common: a text, or a condition on a row. */
  @state() private filter = ''
  @state() private sorted: Sorted | undefined
  /** The text of a table being imported; undefined if none is. */
  @state() private importing: string | undefined
  @query('.box') private box!: HTMLElement | null
  /** The column in which the present row was entered; Enter returns to it, one row down. */
  private startColumn = 0
  private drawn: { readonly view: WideView<TableCell>; readonly filter: string; readonly state: TableState } | undefined

  override focus(options?: FocusOptions): void {
    const first = this.renderRoot.querySelector<HTMLElement>(`[data-at="${this.row} ${this.column}"], .f, .press`)
    first?.focus(options)
  }

  private get cell(): TableCell {
    return this.view.get().cell
  }

  /** Requests a change of the table and shows the reason if it is refused. */
  private put(cell: TableCell, key?: string): boolean {
    const refused = requestChange(this, { do: 'replace', cell }, key)
    if (refused !== undefined) {
      this.message = refused
      this.requestUpdate()
    }
    return refused === undefined
  }

  /** Each action is one undo step. */
  private act(cell: TableCell): boolean {
    return this.put(cell, `rows:${cell.id}:${++acts}`)
  }

  private type(row: number, column: number, text: string): void {
    this.message = ''
    this.put(withField(this.cell, row, column, text), `field:${this.cell.id}:${row}:${column}`)
  }

  /** Computed once per state of the table, since scrolling changes nothing in it. */
  private tableState(): TableState {
    const view = this.view.get()
    const { filter } = this
    if (this.drawn?.view !== view || this.drawn.filter !== filter)
      this.drawn = { view, filter, state: tableStateOf(view, filter) }
    return this.drawn.state
  }

  // Moving between fields.

  private readonly keys = (event: KeyboardEvent): void => {
    const step = stepOf(event)
    if (!step || event.defaultPrevented) return
    event.preventDefault()
    event.stopPropagation()
    void this.step(step)
  }

  private async step(step: Step): Promise<void> {
    const { shown } = this.tableState()
    const last = (shown?.length ?? this.cell.rows.length) - 1
    const rowAt = (place: number): number => shown?.[place] ?? place
    const place = this.placeOf(this.row)
    switch (step.to) {
      case 'row':
        return this.go(rowAt(Math.max(0, Math.min(place + step.by, last))), this.column)
      case 'end':
        return this.go(rowAt(step.of === 'first' ? 0 : last), this.column)
      case 'column':
        return this.go(this.row, this.beside(this.column, step.by))
      case 'next':
        if (place < last) return this.go(rowAt(place + 1), this.startColumn)
        // An empty last row gets no further row, and rows that are filtered none that would not be seen.
        return !shown && (this.cell.rows[last] ?? []).some((text) => text.trim() !== '')
          ? this.add(last + 1)
          : undefined
      case 'act':
        return this.actOn(step.act)
    }
  }

  /** The place of a row among those shown. */
  private placeOf(row: number): number {
    const { shown } = this.tableState()
    return shown ? Math.max(0, shown.indexOf(row)) : row
  }

  private beside(column: number, by: -1 | 1): number {
    const { columns } = this.cell
    for (let at = column + by; at >= 0 && at < columns.length; at += by) if (!this.isComputed(at)) return at
    return column
  }

  private isComputed(column: number): boolean {
    const found = this.cell.columns[column]
    return found !== undefined && hasFormula(found)
  }

  private firstColumn(): number {
    return Math.max(
      0,
      this.cell.columns.findIndex((column) => !hasFormula(column)),
    )
  }

  private async go(row: number, column: number): Promise<void> {
    this.row = row
    this.column = column
    this.startColumn = column
    await this.updateComplete
    const to = scrollFor(this.placeOf(row), this.seen())
    if (to !== undefined && this.box) this.box.scrollTop = to
    this.look()
    await this.updateComplete
    const on = this.renderRoot.querySelector<HTMLElement>(`[data-at="${row} ${column}"]`)
    on?.focus({ preventScroll: true })
    on?.closest('td')?.scrollIntoView({ block: 'nearest', inline: 'nearest' })
    if (on instanceof HTMLInputElement && on.type === 'text') on.select()
  }

  private readonly focused = (event: FocusEvent): void => {
    const place = (event.target as HTMLElement).dataset?.at?.split(' ').map(Number)
    if (!place) return
    const [row, column] = place as [number, number]
    // Moving along a row with Tab keeps its start column.
    if (row !== this.row) this.startColumn = column
    this.row = row
    this.column = column
    void this.keepFieldVisible(event.target as HTMLElement)
  }

  /** The error of a field must not cover it. */
  private async keepFieldVisible(field: HTMLElement): Promise<void> {
    await this.updateComplete
    if (this.renderRoot.querySelector('#problem')) field.closest('td')?.scrollIntoView({ block: 'nearest' })
  }

  private readonly pressed = (event: PointerEvent): void => {
    const place = (event.target as HTMLElement).dataset?.at?.split(' ').map(Number)
    if (place) this.startColumn = place[1] as number
  }

  // Rows.

  private async add(at: number): Promise<void> {
    const { cell } = this
    if (cell.rows.length >= MAX_ROWS) {
      this.message = tableWords.full(MAX_ROWS)
      return
    }
    this.filter = ''
    if (this.act(withRow(cell, at))) await this.go(at, this.firstColumn())
  }

  private async actOn(act: RowAct): Promise<void> {
    const { cell, row } = this
    if (act === 'below') return this.add(Math.min(row + 1, cell.rows.length))
    if (!cell.rows[row]) return
    if (act === 'fill') return this.fillDown()
    if (act === 'sort') return this.sort(this.column)
    if (act === 'remove') {
      if (!this.act(withoutRow(cell, row))) return
      this.message = tableWords.rowRemoved(row + 1)
      if (cell.rows.length > 1) return this.go(Math.min(row, cell.rows.length - 2), this.column)
      await this.updateComplete
      this.renderRoot.querySelector<HTMLElement>('.add')?.focus()
      return
    }
    const to = row + (act === 'up' ? -1 : 1)
    const moved = withRowMoved(cell, row, to)
    if (moved !== cell && this.act(moved)) await this.go(to, this.column)
  }

  private async fillDown(): Promise<void> {
    const { cell, filled } = withFilledDown(this.cell, this.row, this.column)
    if (filled > 0 && !this.act(cell)) return
    this.message = tableWords.filledDown(filled)
    await this.go(this.row, this.column)
  }

  /** Sorts by a column; where that is done already, the other way round. */
  private async sort(column: number): Promise<void> {
    const { node, labels } = this.tableState()
    if (!node) return
    const { sortedTable } = await import('../../worksheet/table/sort.ts')
    const descending = this.sorted?.column === column && !this.sorted.descending
    if (!this.act(sortedTable(this.view.get().sheet.engine, node, column, descending))) return
    this.sorted = { column, descending }
    this.message = tableWords.sorted(labels[column] as string, descending)
  }

  // Importing a table, and saving this one as a file.

  private readonly pasted = (event: ClipboardEvent): void => {
    const text = event.clipboardData?.getData('text/plain') ?? ''
    const isTable = /[\t\r\n]/.test(text.replace(/(\r\n|\r|\n)$/, ''))
    if (!isTable || event.defaultPrevented) return
    event.preventDefault()
    void this.paste(text)
  }

  private async paste(text: string): Promise<void> {
    const { pasteTable } = await import('./paste-table.ts')
    const { cell, row, column } = this
    const pasted = pasteTable(cell, text, row, column)
    if (pasted === undefined) {
      this.importing = text
      return
    }
    if (typeof pasted === 'string') {
      this.message = pasted
      return
    }
    if (!this.act(pasted.cell)) return
    this.message = tableWords.pasted(rowCountText(pasted.rows, 0).text, row + 1)
    await this.go(row, column)
  }

  private async openImport(): Promise<void> {
    this.importing = ''
    await import('./table-import.ts')
  }

  private readonly imported = (event: CustomEvent<{ readonly cell: TableCell; readonly rows: number }>): void => {
    const { cell, rows } = event.detail
    if (!this.act(cell)) return
    this.importing = undefined
    this.message = tableWords.added(rowCountText(rows, 0).text)
    void this.go(cell.rows.length - rows, this.firstColumn())
  }

  private async cancelImport(): Promise<void> {
    this.importing = undefined
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('.import')?.focus()
  }

  private async save(): Promise<void> {
    const { saveTable } = await import('./save-table.ts')
    this.message = await saveTable(this.view.get())
  }

  // Drawing.

  private seen(): Viewport {
    const { box } = this
    if (!box) return this.viewport
    const head = this.renderRoot.querySelector('thead')?.offsetHeight ?? 0
    const foot = this.renderRoot.querySelector<HTMLElement>('tfoot.held')?.offsetHeight ?? 0
    return { top: box.scrollTop, height: Math.max(ROW_HEIGHT, box.clientHeight - head - foot) }
  }

  private readonly look = (): void => {
    const seen = this.seen()
    if (seen.top !== this.viewport.top || seen.height !== this.viewport.height) this.viewport = seen
  }

  override willUpdate(): void {
    const { rows, columns } = this.cell
    if (this.row >= rows.length) this.row = Math.max(0, rows.length - 1)
    if (this.column >= columns.length || this.isComputed(this.column)) this.column = this.firstColumn()
    if (this.importing !== undefined) void import('./table-import.ts')
  }

  override updated(_: PropertyValues<this>): void {
    for (const pad of this.renderRoot.querySelectorAll<HTMLElement>('.pad td'))
      pad.style.blockSize = `${Number(pad.dataset.rows) * ROW_HEIGHT}px`
  }

  /** The given column if it can be typed into, otherwise the first that can. */
  private fillable(column: number): number {
    return this.isComputed(column) ? this.firstColumn() : column
  }

  private table(tableState: TableState): TemplateResult {
    const { cell } = tableState
    if (cell.columns.length === 0) return html`<p class="quiet">${tableWords.noColumns}</p>`
    return html`
      <div class="box" role="region" tabindex="0" aria-labelledby="title count" @scroll=${this.look}>
        <table
          aria-labelledby="title"
          aria-rowcount=${cell.rows.length + 1}
          @keydown=${this.keys}
          @focusin=${this.focused}
          @pointerdown=${this.pressed}
          @paste=${this.pasted}
        >
          ${tableHead(tableState, { sorted: this.sorted, sort: (at) => void this.sort(at) })}
          <tbody>
            ${tableRows(tableState, {
              viewport: this.viewport,
              row: this.row,
              column: this.column,
              put: (row, column, text) => this.type(row, column, text),
            })}
          </tbody>
          ${tableFoot(tableState)}
        </table>
      </div>
      ${fieldError(tableState, this.row, this.column, (next) => {
        this.type(this.row, this.column, next)
        void this.go(this.row, this.column)
      })}
      ${tableGroups(tableState)}
    `
  }

  override render(): TemplateResult {
    const tableState = this.tableState()
    const { cell, leftOut, computed } = tableState
    const counted = computed?.counted.length ?? cell.rows.length - leftOut.length
    return html`
      <section aria-labelledby="title">
        <div class="head">
          <h3 id="title">${labelOf(cell)}</h3>
          ${tableTools(tableState, {
            filter: this.filter,
            setFilter: (filter) => {
              this.filter = filter
            },
            group: (name) => this.act(grouped(cell, name)),
          })}
          <span id="count">${rowCountText(counted, leftOut.length).text}</span>
        </div>
        ${this.table(tableState)} ${tableErrors(this.view.get())} ${omittedRowsList(tableState, (row, column) => void this.go(row, this.fillable(column)))}
        <div class="acts">
          ${cell.columns.length === 0 ? nothing : rowActs(tableState, this.row, (act) => void this.actOn(act))}
          ${
            cell.columns.length === 0
              ? nothing
              : html`<button type="button" class="press add" @click=${() => void this.add(cell.rows.length)}>${tableWords.addRow}</button>`
          }
          <button type="button" class="press import" aria-expanded=${this.importing !== undefined} @click=${() => void (this.importing === undefined ? this.openImport() : this.cancelImport())}>
            ${tableWords.pasteOrOpen}
          </button>
          ${
            cell.columns.length === 0
              ? nothing
              : html`<button type="button" class="press" @click=${() => void this.save()}>${tableWords.saveCsv}</button>`
          }
        </div>
        <p class="said" role="status">${this.message}</p>
        ${
          this.importing === undefined
            ? nothing
            : html`<table-import
                .cell=${cell}
                .text=${this.importing}
                @table-imported=${this.imported}
                @import-cancelled=${() => void this.cancelImport()}
              ></table-import>`
        }
      </section>
    `
  }
}

declare global {
  interface HTMLElementEventMap {
    'table-imported': CustomEvent<{ readonly cell: TableCell; readonly rows: number }>
    'import-cancelled': CustomEvent<void>
  }
}
