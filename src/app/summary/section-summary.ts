import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import type { Section } from '../open/sections.ts'
import { foldedText } from './words.ts'

/** The line under the heading of a folded section that counts its checks by state. */
@customElement('section-summary')
export class SectionSummary extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      p {
        display: flex;
        align-items: center;
        min-block-size: var(--fold-row);
        border-block-end: 1px solid var(--rule);
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @property({ attribute: false }) section!: Section

  override render(): TemplateResult {
    this.open.changed.get()
    const { rows, exact } = this.section
    // An edit replaces the cell object, so the current ones are read from the sheet.
    const cells = [...rows, ...exact].flatMap(({ id }) => this.open.sheet.cell(id) ?? [])
    return html`<p>${foldedText(this.open.sheet.checkSummaryOf(cells), cells.length)}</p>`
  }
}
