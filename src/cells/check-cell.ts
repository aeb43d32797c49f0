import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { CellSignal, CheckView } from './cell-view.ts'
import { checkSign, STATE_WORDS, signStyle } from './check-sign.ts'
import { shared } from './styles.ts'

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
`

/** A check on the fill-in face: a shape, its state in words, and what it found. */
@customElement('check-cell')
export class CheckCell extends SignalWatcher(LitElement) {
  static override styles = [shared, signStyle, checkStyle]

  @property({ attribute: false }) view!: CellSignal<CheckView>

  override render(): TemplateResult {
    const { cell, outcome } = this.view.get()
    const error = outcome.state === 'error' ? outcome.diagnostics[0]?.message : undefined
    return html`
      <div class="check">
        ${checkSign(outcome.state)}
        <div>
          <p><b>${STATE_WORDS[outcome.state]}:</b> ${outcome.message || error || cell.label || cell.name}</p>
          ${error && outcome.message && error !== outcome.message ? html`<p class="small quiet">${error}</p>` : nothing}
        </div>
      </div>
    `
  }
}
