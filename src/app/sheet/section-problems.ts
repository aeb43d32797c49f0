import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import { UNTITLED_SECTION } from '../common/words.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { type Section, sectionsOf } from '../open/sections.ts'
import { sheetWords as words } from './words.ts'

const MOST = 5

/** In the head of a sheet: the sections with a check to look at, each leading there. */
@customElement('section-troubles')
export class SectionProblems extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      p {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        column-gap: 0.7rem;
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet

  private isTroubled({ rows, exact }: Section): boolean {
    const { errors, fail, marginal, waiting } = this.open.sheet.checkSummaryOf([...rows, ...exact])
    return errors + fail + marginal + waiting > 0
  }

  private lead({ id }: Section): void {
    this.dispatchEvent(new CustomEvent('show-trouble', { detail: id, bubbles: true, composed: true }))
  }

  override render(): TemplateResult | typeof nothing {
    this.open.changed.get()
    const sections = sectionsOf(this.open.sheet.cells)
    if (sections.length < 2) return nothing
    const troubled = sections.filter((section) => section.heading && this.isTroubled(section))
    if (troubled.length === 0) return nothing
    const more = troubled.length - MOST
    return html`
      <p class="small">
        <span class="quiet">${words.goTo}</span>
        ${troubled
          .slice(0, MOST)
          .map(
            (section) =>
              html`<button type="button" class="word" @click=${() => this.lead(section)}>${section.heading?.text || UNTITLED_SECTION}</button>`,
          )}
        ${more > 0 ? html`<span class="quiet">${words.more(more)}</span>` : nothing}
      </p>
    `
  }
}
