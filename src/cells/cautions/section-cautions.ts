import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shortList } from '../../units/plural.ts'
import { type CellSignal, labelOf, type ResultView } from '../shared/cell-view.ts'
import { cellWords } from '../shared/words.ts'
import { shared } from '../style/styles.ts'

/** The cautions of a section’s results, for people and originals: each once, with the rows it is about. */
@customElement('section-cautions')
export class SectionCautions extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      ul {
        display: grid;
        gap: 0.5rem;
        margin: 0;
        padding: 0.8rem 0;
        list-style: none;
        border-block-end: 1px solid var(--rule);
      }
      li {
        padding-inline-start: 0.8rem;
        border-inline-start: 4px solid var(--ink);
      }
    `,
  ]

  @property({ attribute: false }) views: readonly CellSignal<ResultView>[] = []

  override render(): TemplateResult | string {
    const about = new Map<string, string[]>()
    for (const view of this.views) {
      const { cell, outcome } = view.get()
      if (outcome.state !== 'value') continue
      for (const caution of outcome.safety) about.set(caution, [...(about.get(caution) ?? []), labelOf(cell)])
    }
    if (about.size === 0) return ''
    return html`
      <ul>
        ${[...about].map(
          ([caution, labels]) =>
            html`<li><b>${cellWords.caution}</b> ${caution} <span class="quiet">(${shortList([...new Set(labels)])})</span></li>`,
        )}
      </ul>
    `
  }
}
