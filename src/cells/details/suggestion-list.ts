import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Offer } from '../../worksheet/advice/offers.ts'
import type { NoPlan, Plan } from '../../worksheet/advice/plan.ts'
import { consequenceText, noPlanText, planText, wholePlanText } from '../../worksheet/advice/plan-text.ts'
import type { Change, Sheet, Worksheet } from '../../worksheet/index.ts'
import { requestChange } from '../shared/cell-view.ts'
import { shared } from '../style/styles.ts'
import { askForOffers } from './advice-request.ts'
import { unbrokenFigures, withUnbrokenFigures } from './unbroken-figures.ts'
import { detailsWords } from './words.ts'

const changeOf = ({ cells }: Plan): Change => ({
  do: 'several',
  changes: cells.map((cell) => ({ do: 'replace', cell })),
})

/** Plans as sentences, and parts that would help: each is applied by one press and reverted by one undo. */
@customElement('suggestion-list')
export class SuggestionList extends LitElement {
  static override styles = [
    shared,
    unbrokenFigures,
    css`
      ul {
        margin: 0.5rem 0 0.2rem;
        padding: 0;
        list-style: none;
        border: 1px solid var(--rule);
        border-radius: 4px;
      }
      p {
        margin-block-start: 4px;
      }
      li + li {
        border-block-start: 1px solid var(--rule);
      }
      button {
        display: grid;
        grid-template-columns: 1.4em minmax(0, 1fr);
        inline-size: 100%;
        align-content: center;
        min-block-size: var(--field);
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

  /** Why there is no plan. */
  @property({ attribute: false }) none: NoPlan | undefined
  /** The name of the failing check that parts are offered for; empty for none. */
  @property() check = ''
  @state() private offers: readonly Offer[] = []
  /** The sheet the offers were asked for. */
  private offeredFor: Worksheet | undefined

  override updated(changed: PropertyValues): void {
    const { worksheet } = this.sheet
    if (this.stale || this.check === '' || (this.offeredFor === worksheet && !changed.has('check'))) return
    this.offeredFor = worksheet
    void this.ask(worksheet)
  }

  private async ask(worksheet: Worksheet): Promise<void> {
    const { check } = this
    const offers = await askForOffers(this, this.sheet)
    if (this.offeredFor === worksheet && this.check === check) this.offers = offers?.get(check) ?? []
  }

  override render(): TemplateResult | typeof nothing {
    const { sheet, plans, whole, none } = this
    const offers = this.offeredFor === sheet.worksheet || this.stale ? this.offers : []
    return html`
      ${none ? html`<p class="small">${noPlanText(sheet, none)}</p>` : nothing}
      ${
        plans.length === 0 && !whole && offers.length === 0
          ? nothing
          : html`<ul>
              ${whole ? this.press(whole, wholePlanText(sheet, whole)) : nothing}
              ${plans.map((plan) => this.press(plan, planText(sheet, plan)))}
              ${offers.map((offer) => this.offer(offer))}
            </ul>`
      }
    `
  }

  /** Adding a part changes the sheet’s sections, so the page does it. */
  private offer({ part, text, setUp, then }: Offer): TemplateResult {
    const ask = (): void => {
      const detail = { part, ...(setUp === undefined ? {} : { setUp }) }
      this.dispatchEvent(new CustomEvent('part-asked', { detail, bubbles: true, composed: true }))
    }
    return html`<li>
      <button type="button" data-part=${part} ?disabled=${this.stale} @click=${ask}>
        <span aria-hidden="true">+</span>
        <span>${text}. <span class="quiet">${detailsWords.addsSection} ${then}</span></span>
      </button>
    </li>`
  }

  private press(plan: Plan, sentence: string): TemplateResult {
    const then = consequenceText(this.sheet, plan)
    return html`<li>
      <button type="button" ?disabled=${this.stale} @click=${() => requestChange(this, changeOf(plan))}>
        <span aria-hidden="true">→</span>
        <span>${withUnbrokenFigures(sentence)}${then === '' ? nothing : html` <span class="quiet">${withUnbrokenFigures(then)}</span>`}</span>
      </button>
    </li>`
  }
}
