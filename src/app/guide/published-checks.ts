import { PUBLISHED, VALIDATION } from 'virtual:published'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { fold, shared } from '../../cells/style/styles.ts'
import type { PublishedRow } from '../../functions/published/report.ts'
import { fetched } from '../templates/prepared-template.ts'
import { guideWords as words } from './words.ts'

/** A comparison, with its source as a place in the list of sources. */
type Row = Omit<PublishedRow, 'source' | 'read_at'> & { readonly source: number }

interface Published {
  readonly sources: readonly string[]
  readonly rows: readonly Row[]
  /** The ids of the rows that check each function. */
  readonly functions: Readonly<Record<string, readonly string[]>>
}

let fetching: Promise<Published> | undefined

/** Fetches the comparisons once; a failure is forgotten, so that opening again tries again. */
function fetchPublished(): Promise<Published> {
  fetching ??= fetched<Published>(PUBLISHED)
  fetching.catch(() => {
    fetching = undefined
  })
  return fetching
}

/** How a function was checked: published values beside ours, fetched when they are opened. */
@customElement('published-checks')
export class PublishedChecks extends LitElement {
  static override styles = [
    shared,
    fold,
    css`
      .scroll {
        overflow-x: auto;
      }
      table {
        border-collapse: collapse;
      }
      th,
      td {
        padding: 0.3rem 0.8rem 0.3rem 0;
        border-block-end: 1px solid var(--rule);
        text-align: start;
        vertical-align: top;
      }
      .figure {
        white-space: nowrap;
      }
      code {
        font-family: var(--mono);
        font-size: 0.92rem;
        overflow-wrap: anywhere;
      }
    `,
  ]

  /** The function's name. */
  @property() name = ''
  @state() private rows: readonly Omit<PublishedRow, 'read_at'>[] | undefined
  @state() private failed = false

  private async open(event: Event): Promise<void> {
    if (!(event.target as HTMLDetailsElement).open || this.rows) return
    this.failed = false
    try {
      const { sources, rows, functions } = await fetchPublished()
      const ids = new Set(functions[this.name] ?? [])
      this.rows = rows.filter(({ id }) => ids.has(id)).map((row) => ({ ...row, source: sources[row.source] ?? '' }))
    } catch {
      this.failed = true
    }
  }

  private row(row: Omit<PublishedRow, 'read_at'>): TemplateResult {
    return html`
      <tr>
        <td>${row.quantity}<br><code>${row.formula}</code></td>
        <td class="figure">${row.published}</td>
        <td class="figure">${row.ours}</td>
        <td class="figure">${row.difference || (row.agrees ? words.noDifference : words.differs)}</td>
        <td>${row.source}${row.quoted ? words.quoted : nothing}${row.note ? html`. ${row.note}` : nothing}</td>
      </tr>
    `
  }

  private content(): TemplateResult {
    if (this.failed) return html`<p role="alert">${words.notFetched}</p>`
    if (!this.rows) return html`<p class="quiet" role="status">${words.fetching}</p>`
    if (this.rows.length === 0) return html`<p>${words.notPublished}</p>`
    return html`
      <div class="scroll">
        <table>
          <thead>
            <tr>${words.heads.map((head) => html`<th scope="col">${head}</th>`)}</tr>
          </thead>
          <tbody>${this.rows.map((row) => this.row(row))}</tbody>
        </table>
      </div>
    `
  }

  override render(): TemplateResult {
    return html`
      <details @toggle=${this.open}>
        <summary>${words.howChecked}</summary>
        ${this.content()}
        <p><a href=${VALIDATION} target="_blank" rel="noopener">${words.allPublished}</a></p>
      </details>
    `
  }
}
