import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { confirmed, type ReadingCell } from '../../worksheet/document/reading.ts'
import { type Outcome, readingText } from '../../worksheet/index.ts'
import { labelOf, requestChange } from '../shared/cell-view.ts'
import { shared } from '../style/styles.ts'
import { detailsWords } from './words.ts'

/** A reading that is older than a change of what it depends on: what changed, and a button that confirms it as it is. */
@customElement('outdated-note')
export class OutdatedNote extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: 0 10px;
        align-items: center;
        padding-inline-start: 0.5rem;
        border-inline-start: 2px dashed var(--ink);
      }
      .word {
        min-block-size: var(--word-height, auto);
      }
    `,
  ]

  @property({ attribute: false }) cell!: ReadingCell
  /** The labels of what changed. */
  @property({ attribute: false }) labels: readonly string[] = []

  private confirm(): void {
    requestChange(this, { do: 'replace', cell: confirmed(this.cell) })
  }

  override render(): TemplateResult {
    const { cell, labels } = this
    return html`
      <span class="small">${detailsWords.measuredBefore(labels, readingText(cell))}</span>
      <button type="button" class="word" aria-label=${detailsWords.confirmThis(labelOf(cell))} @click=${() => this.confirm()}>${detailsWords.confirm}</button>
    `
  }
}

/** The note under a reading that is outdated; nothing under others. */
export const outdatedNote = (
  cell: ReadingCell,
  outcome: Outcome | undefined,
  called: (name: string) => string,
): TemplateResult | typeof nothing =>
  outcome?.state === 'value' && outcome.before
    ? html`<outdated-note .cell=${cell} .labels=${outcome.before.map(called)}></outdated-note>`
    : nothing

declare global {
  interface HTMLElementTagNameMap {
    'outdated-note': OutdatedNote
  }
}
