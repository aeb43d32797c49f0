import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Drawing, Table } from '../../drawings/canvas/tree.ts'
import type { Cell } from '../../worksheet/index.ts'
import { cellWords } from '../shared/words.ts'
import { fold, shared } from '../style/styles.ts'
import type { SavedAs } from './save-drawing.ts'
import { saveOrExplain } from './save-or-explain.ts'
import { pictureWords as words } from './words.ts'

const rowsOf = ({ head, rows }: Table): TemplateResult => html`
  <table class="quiet">
    <thead><tr>${head.map((one) => html`<th scope="col">${one}</th>`)}</tr></thead>
    <tbody>${rows.map((row) => html`<tr>${row.map((one) => html`<td>${one}</td>`)}</tr>`)}</tbody>
  </table>
`

/** What is below a drawing: its content in words, and buttons that save it as a file. */
@customElement('drawing-notes')
export class DrawingNotes extends LitElement {
  static override styles = [
    shared,
    fold,
    css`
      .under {
        display: flex;
        flex-wrap: wrap;
        align-items: start;
        column-gap: 1.2rem;
      }
      details[open] {
        order: 1;
        flex-basis: 100%;
      }
      /* What is pressed keeps its place, and what it unfolds follows below the buttons. */
      @supports selector(::details-content) {
        details[open] {
          display: contents;
        }
        details[open]::details-content {
          order: 1;
          flex-basis: 100%;
        }
      }
      table {
        border-collapse: collapse;
        font-variant-numeric: tabular-nums;
      }
      th {
        font-weight: inherit;
        vertical-align: bottom;
      }
      th,
      td {
        padding: 0.15rem 0 0.15rem 1rem;
        text-align: end;
        border-block-end: 1px solid var(--rule);
      }
      :is(th, td):first-child {
        padding-inline-start: 0;
        text-align: start;
      }
      ul {
        margin: 0.3rem 0 0;
        padding-inline-start: 1.1rem;
      }
    `,
  ]

  @property({ attribute: false }) drawn!: Drawing
  /** Why some of the figures are not drawn. */
  @property({ attribute: false }) missing: readonly string[] = []
  @property({ attribute: false }) sheetTitle = ''
  /** The cells of its worksheet. */
  @property({ attribute: false }) cells: readonly Cell[] = []
  @state() private problem = ''

  private async save(as: SavedAs): Promise<void> {
    this.problem = ''
    const why = await saveOrExplain(this.drawn, this.sheetTitle, as)
    if (why) this.problem = words.notSaved(why)
  }

  /** What the figures contradict; an original taken in several frames is larger than the field of one. */
  private get cautions(): readonly string[] {
    const inFrames = this.cells.some((one) => one.kind === 'drawing' && one.drawing === 'tiles')
    return inFrames ? [] : (this.drawn.cautions ?? [])
  }

  override render(): TemplateResult {
    const { description, table, omissions } = this.drawn
    const cannot = [...new Set([...omissions, ...this.missing])].filter((why) => why !== description)
    return html`
      ${this.cautions.map((why) => html`<p><b>${cellWords.caution}</b> ${why}</p>`)}
      <div class="under">
        <details>
          <summary>${words.inWords}</summary>
          <p class="quiet">${description}</p>
          ${table ? rowsOf(table) : nothing}
          ${cannot.length > 0 ? html`<ul class="quiet">${cannot.map((why) => html`<li>${why}</li>`)}</ul>` : nothing}
        </details>
        <button type="button" class="word" @click=${() => void this.save('svg')}>${words.saveSvg}</button>
        <button type="button" class="word" @click=${() => void this.save('png')}>${words.savePng}</button>
      </div>
      ${this.problem ? html`<p role="alert">${this.problem}</p>` : nothing}
    `
  }
}
