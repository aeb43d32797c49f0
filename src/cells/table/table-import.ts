import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { MAX_ROWS } from '../../worksheet/format/format.ts'
import type { Column, TableCell } from '../../worksheet/index.ts'
import { columnLabel } from '../../worksheet/table/columns.ts'
import { readTable, TableError, type TextTable } from '../../worksheet/table/csv.ts'
import {
  type ImportTarget,
  type Match,
  matchTable,
  missingColumns,
  type Source,
  takeTable,
  withDefaults,
} from '../../worksheet/table/match-import.ts'
import { hasFormula } from '../../worksheet/table/read-table.ts'
import { rowCountText } from '../../worksheet/table/row-status.ts'
import { labelled, labelledStyle, selected, ticked } from '../fields/labelled.ts'
import { field, shared } from '../style/styles.ts'
import { tableText } from './table-file.ts'
import { tableWords } from './words.ts'

/** The number of example fields shown for each column. */
const EXAMPLES = 3
const LONGEST_EXAMPLE = 24
/** A longer text, usually from a file, is not shown in the field because it would be slow. */
const LONGEST_SHOWN = 200_000

/** The value of the option for a new column of text. */
const NEW_TEXT = 'new-text'

const entryText = ({ entry, unit }: Column): string => {
  if (entry !== undefined && entry !== 'quantity') return tableWords.entries[entry]
  return unit ? tableWords.quantityIn(unit) : tableWords.number
}

/** Matches the columns of a pasted or opened table before it is imported. */
@customElement('table-import')
export class TableImport extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
    css`
      .all {
        display: grid;
        gap: 0.7rem;
        margin-block: 0.7rem;
        padding: 0.9rem;
        border: 2px solid var(--ink);
      }
      textarea.field {
        max-block-size: 12rem;
        font-family: var(--mono);
        font-size: 0.86rem;
        white-space: pre;
        overflow: auto;
      }
      .match {
        margin: 0;
        padding: 0;
        list-style: none;
        border-block-start: 1px solid var(--rule);
      }
      .match li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        gap: 0 1rem;
        align-items: center;
        padding-block: 0.3rem;
        border-block-end: 1px solid var(--rule);
      }
      .match .small {
        display: block;
        overflow-wrap: anywhere;
      }
      .missing {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr));
        gap: 0.7rem 1rem;
      }
      .file {
        position: relative;
        inline-size: fit-content;
      }
      .file input {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        opacity: 0;
        cursor: pointer;
      }
      .file:focus-within {
        outline: 3px solid var(--ring);
        outline-offset: 2px;
      }
      @media (max-width: 34rem) {
        .match li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ]

  @property({ attribute: false }) cell!: TableCell
  /** The text pasted into the table. */
  @property() text = ''
  @state() private from = ''
  @state() private match: Match | undefined
  @state() private how: 'below' | 'instead' = 'below'
  @state() private refused = ''
  /** By column, what every row takes that this table does not say. */
  @state() private forAll: ReadonlyMap<number, string> = new Map()
  private table: TextTable | undefined
  @query('textarea') private place!: HTMLTextAreaElement | null

  override firstUpdated(): void {
    ;(this.renderRoot.querySelector<HTMLElement>('select') ?? this.place)?.focus()
    this.scrollIntoView({ block: 'nearest' })
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('text') && this.text !== '') this.read(this.text)
  }

  private read(text: string): void {
    this.table = undefined
    this.match = undefined
    this.refused = ''
    if (text.trim() === '') return
    try {
      this.table = readTable(text, { most: MAX_ROWS + 1 })
      this.match = matchTable(this.cell.columns, this.table.rows)
    } catch (error) {
      if (!(error instanceof TableError)) throw error
      this.refused = error.message
    }
  }

  private async open(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement
    const file = input.files?.[0]
    input.value = ''
    if (!file) return
    this.from = file.name
    try {
      this.text = await tableText(file)
    } catch (error) {
      if (!(error instanceof TableError)) throw error
      this.text = ''
      this.table = undefined
      this.match = undefined
      this.refused = error.message
    }
  }

  private aim(at: number, value: string): void {
    const { match } = this
    if (!match) return
    const source = match.sources[at] as Source
    const goal: ImportTarget =
      value === 'nowhere' ? 'nowhere' : value === 'new' || value === NEW_TEXT ? 'new' : Number(value)
    const { unit: _, ...asNew } = source.asNew
    const next: Source = { ...source, goal, asNew: value === NEW_TEXT ? { ...asNew, entry: 'text' } : source.asNew }
    // Two columns cannot go into one, so the other is not imported.
    const sources = match.sources.map((one, other) =>
      other !== at && typeof goal === 'number' && one.goal === goal ? { ...one, goal: 'nowhere' as const } : one,
    )
    this.match = { ...match, sources: sources.with(at, next) }
  }

  private import(): void {
    const { table, match, cell, how } = this
    if (!table || !match) return
    try {
      const next = takeTable(withDefaults(cell, this.missing(match)), table.rows, match, how)
      const rows = how === 'instead' ? next.rows.length : this.count(table, match)
      this.dispatchEvent(new CustomEvent('table-imported', { detail: { cell: next, rows } }))
    } catch (error) {
      if (!(error instanceof TableError)) throw error
      this.refused = error.message
    }
  }

  /** What was entered for the columns that are still missing. */
  private missing(match: Match): ReadonlyMap<number, string> {
    const columns = missingColumns(this.cell.columns, match)
    return new Map([...this.forAll].filter(([at]) => columns.includes(at)))
  }

  private missingFields(match: Match): TemplateResult | typeof nothing {
    const missing = missingColumns(this.cell.columns, match)
    if (missing.length === 0) return nothing
    return html`
      <p>${tableWords.missing(missing.length)}</p>
      <div class="missing">${missing.map((at) => {
        const column = this.cell.columns[at] as Column
        const put = (value: string): void => {
          this.forAll = new Map([...this.forAll, [at, value]])
        }
        const label = tableWords.forAll(columnLabel(column))
        const value = this.forAll.get(at) ?? ''
        return column.entry === 'choice'
          ? selected({
              label,
              value,
              options: ['', ...(column.options ?? [])].map((option) => [option, option || '–'] as const),
              put,
            })
          : labelled({ label, value, ...(column.unit ? { hint: column.unit } : {}), put })
      })}</div>
    `
  }

  private count({ rows }: TextTable, { hasHeadings }: Match): number {
    return (hasHeadings ? rows.slice(1) : rows).filter((row) => row.some((text) => text.trim() !== '')).length
  }

  private source(source: Source, at: number, table: TextTable, { hasHeadings }: Match): TemplateResult {
    const { columns } = this.cell
    const examples = table.rows
      .slice(hasHeadings ? 1 : 0, (hasHeadings ? 1 : 0) + EXAMPLES)
      .map((row) => row[at] ?? '')
      .map((text) => (text.length > LONGEST_EXAMPLE ? `${text.slice(0, LONGEST_EXAMPLE)}…` : text))
    const name = source.heading || tableWords.columnNumber(at + 1)
    const { goal, asNew } = source
    const guessed = asNew.entry === 'text' ? [] : [['new', tableWords.newColumn(entryText(asNew))] as const]
    return html`
      <li>
        <span><b>${name}</b> <span class="small quiet">${examples.filter((text) => text.trim() !== '').join(' · ') || tableWords.empty}</span></span>
        ${selected({
          label: tableWords.goesTo(name),
          value: goal === 'new' ? (asNew.entry === 'text' ? NEW_TEXT : 'new') : `${goal}`,
          options: [
            ...columns.flatMap((column, place) =>
              hasFormula(column) ? [] : [[`${place}`, columnLabel(column)] as const],
            ),
            ...guessed,
            [NEW_TEXT, tableWords.newColumn(tableWords.entries.text)],
            ['nowhere', tableWords.nowhere],
          ],
          put: (value) => this.aim(at, value),
        })}
      </li>
    `
  }

  private preview(): TemplateResult | typeof nothing {
    const { table, match, cell } = this
    if (!table || !match) return nothing
    const rows = rowCountText(this.count(table, match), 0).text
    const out = match.sources.filter(({ goal }) => goal === 'nowhere').length
    return html`
      ${ticked(tableWords.hasHeadings, match.hasHeadings, (on) => {
        this.match = matchTable(cell.columns, table.rows, on)
      })}
      <ul class="match">
        ${match.sources.map((source, at) => this.source(source, at, table, match))}
      </ul>
      ${
        cell.rows.some((row) => row.some((text) => text.trim() !== ''))
          ? selected({
              label: tableWords.placeRows,
              value: this.how,
              options: [
                ['below', tableWords.below],
                ['instead', tableWords.instead],
              ],
              put: (how) => {
                this.how = how as typeof this.how
              },
            })
          : nothing
      }
      ${this.missingFields(match)}
      <p class="small quiet">${tableWords.unreadable}${out > 0 ? tableWords.notImported(out) : ''}</p>
      <div class="presses">
        <button type="button" class="press" @click=${this.import}>${tableWords.import(rows)}</button>
        <button type="button" class="press" @click=${this.cancel}>${tableWords.cancel}</button>
      </div>
    `
  }

  private cancel(): void {
    this.dispatchEvent(new CustomEvent('import-cancelled'))
  }

  override render(): TemplateResult {
    const isLong = this.text.length > LONGEST_SHOWN
    return html`
      <div class="all" @keydown=${(event: KeyboardEvent) => event.key === 'Escape' && this.cancel()}>
        <label class="labelled">
          <span class="small quiet">${tableWords.pastedTable} <span>(${tableWords.separators})</span></span>
          <textarea
            class="field"
            rows="3"
            spellcheck="false"
            autocomplete="off"
            .value=${live(isLong ? '' : this.text)}
            placeholder=${isLong ? tableWords.tooLong(this.text.length) : ''}
            @input=${(event: Event) => {
              this.from = ''
              this.text = (event.target as HTMLTextAreaElement).value
              if (this.text === '') this.read('')
            }}
          ></textarea>
        </label>
        <label class="press file">
          ${this.from ? tableWords.openAnother(this.from) : tableWords.openFile}
          <input type="file" accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain" @change=${(event: Event) => void this.open(event)}>
        </label>
        <p role="alert">${this.refused}</p>
        ${this.preview()}
      </div>
    `
  }
}
