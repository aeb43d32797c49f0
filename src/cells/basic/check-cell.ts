import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Suggestions } from '../../worksheet/advice/suggestions.ts'
import type { CheckOutcome } from '../../worksheet/index.ts'
import type { CellSignal, CheckView } from '../shared/cell-view.ts'
import { checkSign, STATE_LABELS, signStyle } from '../shared/check-sign.ts'
import { kitFor } from '../shared/kit-request.ts'
import { shared } from '../style/styles.ts'
import { listed } from './result-cell.ts'

export const checkStyle = css`
  .check {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    column-gap: 0.8rem;
    align-items: start;
    padding-block: 0.75rem;
    border-block-end: 1px solid var(--rule);
  }
  .check .sign {
    margin-block-start: 0.12rem;
  }
  .check .word {
    margin-block: -0.35rem -0.75rem;
  }
`

/** Typing goes first: mends are looked for once nothing was typed for so long. */
const PAUSE_MS = 180

/** A check on the fill-in face: a shape, its state in words, what it found, and what would mend it. */
@customElement('check-cell')
export class CheckCell extends SignalWatcher(LitElement) {
  static override styles = [shared, signStyle, checkStyle]

  @property({ attribute: false }) view!: CellSignal<CheckView>
  @state() private found: Suggestions | undefined
  /** A check that is close is mended only when one asks. */
  @state() private asked = false
  private about: CheckOutcome | undefined
  private waiting: ReturnType<typeof setTimeout> | undefined

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearTimeout(this.waiting)
    this.about = undefined
  }

  override updated(): void {
    const { outcome } = this.view.get()
    if (outcome === this.about) return
    this.about = outcome
    clearTimeout(this.waiting)
    if (!this.isWanted(outcome)) {
      this.asked &&= outcome.state === 'marginal'
      this.found = undefined
      return
    }
    this.waiting = setTimeout(() => void this.look(outcome), PAUSE_MS)
  }

  private isWanted({ state }: CheckOutcome): boolean {
    return state === 'fail' || (state === 'marginal' && this.asked)
  }

  private async look(outcome: CheckOutcome): Promise<void> {
    const { cell, sheet } = this.view.get()
    const [{ suggestionsFor }, kit] = await Promise.all([
      import('../../worksheet/advice/suggestions.ts'),
      kitFor(this, sheet),
      import('../details/suggestion-list.ts'),
    ])
    if (this.about === outcome) this.found = suggestionsFor(sheet, cell.id, kit)
  }

  private mends(outcome: CheckOutcome): TemplateResult | typeof nothing {
    const { called } = this.view.get()
    if (outcome.state === 'marginal' && !this.asked)
      return html`<button type="button" class="word small" @click=${() => {
        this.asked = true
        void this.look(outcome)
      }}>More room</button>`
    if (!this.found || !this.isWanted(outcome)) return nothing
    return html`<mend-list .found=${this.found} .called=${called} none="No single given changes that."></mend-list>`
  }

  override render(): TemplateResult {
    const { cell, outcome, called } = this.view.get()
    const error = outcome.state === 'error' ? outcome.diagnostics[0]?.message : undefined
    return html`
      <div class="check">
        ${checkSign(outcome.state)}
        <div>
          <p><b>${STATE_LABELS[outcome.state]}:</b> ${outcome.message || error || cell.label || cell.name}</p>
          ${error && outcome.message && error !== outcome.message ? html`<p class="small quiet">${error}</p>` : nothing}
          ${
            outcome.hangsOn
              ? html`<p class="small">It holds as given, but not over the whole limits of ${listed(outcome.hangsOn.map(called))}.</p>`
              : nothing
          }
          ${this.mends(outcome)}
        </div>
      </div>
    `
  }
}
