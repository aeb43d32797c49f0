import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { withMeasured } from '../../worksheet/index.ts'
import { type ResultView, requestChange } from '../shared/cell-view.ts'
import { cellWords } from '../shared/words.ts'
import { shared } from '../style/styles.ts'
import { outdatedNote } from './outdated-note.ts'
import { detailsWords } from './words.ts'

/** Under a result: what was measured, how far it is off, what speaks against it, and a button that clears it. */
@customElement('measured-notes')
export class MeasuredNotes extends LitElement {
  static override styles = [
    shared,
    css`
      :host,
      .small {
        display: block;
      }
      .against {
        padding-inline-start: 0.5rem;
        border-inline-start: 2px dashed var(--ink);
      }
    `,
  ]

  @property({ attribute: false }) view!: ResultView

  private clear(): void {
    requestChange(this, { do: 'replace', cell: withMeasured(this.view.cell, '') })
  }

  override render(): TemplateResult {
    const { cell, outcome, called } = this.view
    const value = outcome.state === 'value' ? outcome : undefined
    const { shown, difference = '', adjust, contradicts = [] } = value?.measured ?? {}
    return html`
      ${shown ? html`<span class="small">${detailsWords.measured(shown.text, difference, adjust)}</span>` : nothing}
      ${value?.by ? html`<span class="small">${cellWords.readAs(value.readAs ?? '', value.by)}</span>` : nothing}
      ${outdatedNote(cell, outcome, called)}
      ${contradicts.map((text) => html`<span class="small against">${text}</span>`)}
      <button type="button" class="word" @click=${() => this.clear()}>${detailsWords.clear}</button>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measured-notes': MeasuredNotes
  }
}
