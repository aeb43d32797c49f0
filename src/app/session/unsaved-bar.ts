import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import { toSheet } from '../common/route.ts'
import type { UnsavedSheet, UnsavedSheets } from './unsaved-sheets.ts'
import { rescuedText, sessionWords, unsavedText } from './words.ts'

/** The sheets that are not saved although their page was left: why, and what can be done. */
@customElement('unsaved-bar')
export class UnsavedBar extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: grid;
        gap: 0.5rem;
        max-inline-size: 70rem;
        margin-inline: auto;
        padding-inline: clamp(1rem, 4vw, 2.4rem);
      }
      section {
        padding-inline-start: 0.7rem;
        border-inline-start: 4px solid var(--ink);
      }
    `,
  ]

  @property({ attribute: false }) sheets: readonly UnsavedSheet[] = []
  @property({ attribute: false }) unsaved!: UnsavedSheets
  @state() private said = ''

  private async saveFile(id: string): Promise<void> {
    const worksheet = this.unsaved.worksheet(id)
    if (!worksheet) return
    try {
      const { saveFile } = await import('../../storage/exchange/file.ts')
      this.said = (await saveFile(worksheet)) ? sessionWords.savedAsFile : ''
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  private sheet({ id, title, message }: UnsavedSheet): TemplateResult {
    return html`
      <section>
        <p role="alert">${message === undefined ? rescuedText(title) : unsavedText(title, message)}</p>
        <div class="words">
          <a class="word" href=${toSheet(id)}>${sessionWords.openSheet}</a>
          ${
            message === undefined
              ? nothing
              : html`
                  <button type="button" class="word" @click=${() => void this.unsaved.tryAgain()}>${sessionWords.tryAgain}</button>
                  <button type="button" class="word" @click=${() => void this.saveFile(id)}>${sessionWords.saveAsFile}</button>
                `
          }
        </div>
      </section>
    `
  }

  override render(): TemplateResult {
    return html`${this.sheets.map((one) => this.sheet(one))}
      <p class="small" role="status">${this.said}</p>`
  }
}
