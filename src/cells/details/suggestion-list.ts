import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../worksheet/advice/plan.ts'
import { consequenceText, planText, wholePlanText } from '../../worksheet/advice/plan-text.ts'
import type { Change, Sheet } from '../../worksheet/index.ts'
import { requestChange } from '../shared/cell-view.ts'
import { shared } from '../style/styles.ts'
import { detailsWords } from './words.ts'

const changeOf = ({ cells }: Plan): Change => ({
  do: 'several',
  changes: cells.map((cell) => ({ do: 'replace', cell })),
})

/** Plans as sentences: each is applied by one press and reverted by one undo. */
@customElement('suggestion-list')
export class SuggestionList extends LitElement {
  static override styles = [
    shared,
    css`
      ul {
        margin: 0.5rem 0 0.2rem;
        padding: 0;
        list-style: none;
        border: 1px solid var(--rule);
        border-radius: 4px;
      }
      li + li {
        border-block-start: 1px solid var(--rule);
      }
      button {
        display: grid;
        grid-template-columns: 1.4em minmax(0, 1fr);
        inline-size: 100%;
        padding: 0.45rem 0.6rem;
        border: 0;
        background: none;
        color: inherit;
        font: inherit;
        text-align: start;
        cursor: pointer;
      }
      button:disabled {
        color: var(--quiet);
        cursor: default;
      }
      button:hover:enabled {
        background: var(--mark, #e6e6e6);
      }
    `,
  ]

  @property({ attribute: false }) sheet!: Sheet
  @property({ attribute: false }) plans: readonly Plan[] = []
  /** Whether the sheet has changed since: what was tried then is shown, but not offered. */
  @property({ type: Boolean, reflect: true }) stale = false
  /** A plan for several checks at once, shown first. */
  @property({ attribute: false }) whole: Plan | undefined

  override render(): TemplateResult | typeof nothing {
    const { sheet, plans, whole } = this
    if (plans.length === 0 && !whole) return nothing
    return html`<ul>
      ${whole ? this.press(whole, wholePlanText(sheet, whole)) : nothing}
      ${plans.map((plan) => this.press(plan, planText(sheet, plan)))}
    </ul>`
  }

  private press(plan: Plan, sentence: string): TemplateResult {
    const then = [plan.gives === undefined ? '' : detailsWords.gives(plan.gives), consequenceText(this.sheet, plan)]
      .join(' ')
      .trim()
    return html`<li>
      <button type="button" ?disabled=${this.stale} @click=${() => requestChange(this, changeOf(plan))}>
        <span aria-hidden="true">→</span>
        <span>${sentence}${then === '' ? nothing : html` <span class="quiet">${then}</span>`}</span>
      </button>
    </li>`
  }
}
