import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { sessionWords } from './words.ts'

/** Why the last change is not saved, and a way to save the sheet as a file instead. */
@customElement('save-failed')
export class SaveFailed extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        margin: 4px 32px 8px;
        padding-inline-start: 10px;
        border-inline-start: 4px solid var(--ink);
      }
      .press {
        margin-block: 6px 2px;
        margin-inline-end: 12px;
      }
    `,
  ]

  @property({ attribute: false }) worksheet!: Worksheet
  @property() why = ''
  @state() private said = ''

  private async save(): Promise<void> {
    try {
      const { saveFile } = await import('../../storage/exchange/file.ts')
      this.said = (await saveFile(this.worksheet)) ? sessionWords.savedAsFile : ''
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  override render(): TemplateResult {
    return html`
      <p role="alert">${this.why}</p>
      <button type="button" class="press" @click=${() => void this.save()}>${sessionWords.saveAsFile}</button>
      <span role="status">${this.said}</span>
    `
  }
}
