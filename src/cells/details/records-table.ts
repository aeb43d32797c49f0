import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { type RecordValue, showValue, type Type, type Value } from '../../language/index.ts'
import { shared } from '../style/styles.ts'
import { figuresTable, firstColumn } from './figures-table.ts'
import { detailsWords } from './words.ts'

const MOST = 20

/** A list of records as a table, one row each: tubes with their lengths, lamps with their positions. */
@customElement('records-table')
export class RecordsTable extends LitElement {
  static override styles = [
    shared,
    figuresTable,
    css`
      th,
      td {
        padding: 0.25rem 0 0.25rem 0.5rem;
        white-space: nowrap;
      }
      /* Lamps with their positions and aims fit in a column. */
      td {
        font-size: 0.9333rem;
      }
      th {
        font-size: 0.86rem;
        color: var(--quiet);
        vertical-align: bottom;
        white-space: normal;
      }
      tr:last-child td {
        border-block-end: 0;
      }
      td.text {
        white-space: normal;
      }
    `,
    firstColumn,
  ]

  /** The type of one record. */
  @property({ attribute: false }) type!: Extract<Type, { kind: 'record' }>
  @property() label = ''
  @property({ attribute: false }) rows: readonly Value[] = []

  override render(): TemplateResult {
    const parts = Object.entries(this.type.parts)
    const more = this.rows.length - MOST
    return html`
      <div class="scrolled" tabindex="0" role="region" aria-label=${this.label}>
      <table>
        <thead><tr>${parts.map(([name]) => html`<th scope="col">${name.replaceAll('_', ' ')}</th>`)}</tr></thead>
        <tbody>
          ${this.rows
            .slice(0, MOST)
            .map(
              (row) =>
                html`<tr>${parts.map(([name, type]) => html`<td class=${type.kind === 'text' ? 'text' : ''}>${shownIn((row as RecordValue)[name] as Value, type)}</td>`)}</tr>`,
            )}
        </tbody>
      </table>
      </div>
      ${more > 0 ? html`<p class="small quiet">${detailsWords.moreRows(more)}</p>` : nothing}
    `
  }
}

/** A list within a row is shown without braces; an empty one is a dash. */
const shownIn = (value: Value, type: Type): string =>
  showValue(value, type)
    .text.replace(/^\{|\}$/g, '')
    .replaceAll('_', ' ') || '–'
