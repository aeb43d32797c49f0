import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { SetUp } from '../../worksheet/compose/compose.ts'
import type { OfferedSetUp } from '../../worksheet/compose/part-library.ts'
import { composeWords as words } from './words.ts'

/** The set-ups that may follow the first, and those that do, which can be removed. */
@customElement('set-up-choice')
export class SetUpChoice extends LitElement {
  static override styles = [
    shared,
    css`
      h3 {
        font-size: 1rem;
        padding-block: 0.9rem 0.2rem;
        border-block-end: 1px solid var(--ink);
      }
      p {
        padding-block: 0.4rem 0;
      }
      .presses {
        padding-block: 0.6rem 0.2rem;
      }
      .press b {
        padding-inline-end: 0.5rem;
      }
    `,
  ]

  @property({ attribute: false }) offered: readonly OfferedSetUp[] = []
  @property({ attribute: false }) there: readonly SetUp[] = []

  private say<Detail>(name: string, detail: Detail): void {
    this.dispatchEvent(new CustomEvent<Detail>(name, { detail, bubbles: true, composed: true }))
  }

  override render(): TemplateResult {
    return html`
      <h3>${words.anotherSetUp}</h3>
      <p class="small quiet">${words.aboutSetUps}</p>
      <div class="presses">
        ${this.offered.map(
          (one) => html`
            <button type="button" class="press" @click=${() => this.say('set-up-chosen', one)}>
              <b>${one.title}</b> <span class="small quiet">${one.about}</span>
            </button>
          `,
        )}
      </div>
      ${
        this.there.length > 0
          ? html`<div class="presses">${this.there.map(
              (one) =>
                html`<button type="button" class="press" @click=${() => this.say('set-up-removed', one)}>${words.removeSetUp(one.title)}</button>`,
            )}</div>`
          : nothing
      }
    `
  }
}
