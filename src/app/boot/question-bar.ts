import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import { bootWords as WORDS } from './words.ts'

/** What is asked before many sheets come in. */
export interface Question {
  readonly words: string
  readonly answer: (agreed: boolean) => void
}

/** A question above the page, with its two answers; the focus goes to the one that changes nothing. */
@customElement('question-bar')
export class QuestionBar extends LitElement {
  static override styles = [
    shared,
    css`
      section {
        max-inline-size: 70rem;
        margin-inline: auto;
        padding-inline: clamp(1rem, 4vw, 2.4rem);
      }
    `,
  ]

  @property({ attribute: false }) question!: Question

  override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('[data-cancel]')?.focus()
  }

  override render(): TemplateResult {
    const { words, answer } = this.question
    return html`
      <section role="alertdialog" aria-labelledby="question">
        <p id="question">${words}</p>
        <div class="presses">
          <button type="button" class="press primary" @click=${() => answer(true)}>${WORDS.bringIn}</button>
          <button type="button" class="press" data-cancel @click=${() => answer(false)}>${WORDS.cancel}</button>
        </div>
      </section>
    `
  }
}
