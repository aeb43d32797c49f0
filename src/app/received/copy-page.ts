import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import { isFiguresOnly } from '../../storage/figures/figures-only.ts'
import { type CheckSummary, Sheet, type Worksheet } from '../../worksheet/index.ts'
import { libraryFor } from '../common/library.ts'
import { cellsText, checkSummaryText } from '../common/words.ts'

/** How the checks of a worksheet that is not open stand. */
export const checkSummaryOf = async (worksheet: Worksheet): Promise<CheckSummary> =>
  new Sheet(worksheet, await libraryFor(worksheet.cells)).checkSummary

/** What someone sent, before it is kept: what it is, and the choice. */
@customElement('copy-page')
export class CopyPage extends LitElement {
  static override styles = [
    shared,
    css`
      main {
        display: grid;
        gap: 1rem;
        max-inline-size: 46rem;
        margin-inline: auto;
        padding: clamp(1rem, 3vw, 1.8rem) clamp(1rem, 4vw, 2.4rem) 2rem;
        background: var(--sheet);
        border: 1px solid var(--edge);
      }
      h1 {
        font-size: 1.6rem;
        line-height: 1.2;
        padding-block-end: 0.7rem;
        border-block-end: 2px solid var(--ink);
        overflow-wrap: anywhere;
      }
    `,
  ]

  @property({ attribute: false }) worksheet!: Worksheet
  @property({ attribute: false }) standing!: CheckSummary
  /** It lies on the app's own server; else it came whole in a link. */
  @property({ type: Boolean }) served = false

  private tell(name: 'copy-saved' | 'copy-left'): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, composed: true }))
  }

  override render(): TemplateResult {
    const { title, job, cells } = this.worksheet
    return html`
      <main>
        <h1>${title || 'Untitled worksheet'}</h1>
        ${job ? html`<p>${job}</p>` : ''}
        <p>
          ${this.served ? 'This server keeps' : 'Someone sent you'} this worksheet of ${cellsText(cells.length)}.
          ${checkSummaryText(this.standing)}
        </p>
        ${
          isFiguresOnly(this.worksheet)
            ? html`<p>It holds results and givens only: figures that do not follow the givens, without their formulas.</p>`
            : ''
        }
        <p class="quiet">${this.served ? '' : 'It is all in the link. '}Saved, it is your own copy in this browser; your other sheets stay as they are.</p>
        <div class="presses">
          <button type="button" class="press" @click=${() => this.tell('copy-saved')}><b>Save a copy</b></button>
          <button type="button" class="press" @click=${() => this.tell('copy-left')}>Leave</button>
        </div>
      </main>
    `
  }
}
