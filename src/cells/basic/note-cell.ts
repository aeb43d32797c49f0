import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { CellSignal, NoteView } from '../shared/cell-view.ts'
import { cellWords } from '../shared/words.ts'
import { shared } from '../style/styles.ts'

/** A note in Fill in: prose, or a caution marked by a heavy rule and its first word. */
@customElement('note-cell')
export class NoteCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      .note {
        display: grid;
        gap: 0.5rem;
        max-inline-size: 34rem;
        padding-block: 0.75rem;
        text-wrap: pretty;
        overflow-wrap: break-word;
      }
      p {
        white-space: pre-line;
      }
      .caution {
        margin-block: 0.6rem;
        padding-block: 0.15rem;
        padding-inline-start: 0.8rem;
        border-inline-start: 4px solid var(--ink);
      }
    `,
  ]

  @property({ attribute: false }) view!: CellSignal<NoteView>

  override render(): TemplateResult {
    const { cell } = this.view.get()
    const paragraphs = cell.text.split(/\n\s*\n/)
    const caution = cell.role === 'caution'
    return html`
      <div class="note ${caution ? 'caution' : ''}">
        ${paragraphs.map((text, i) => html`<p>${caution && i === 0 ? html`<b>${cellWords.caution}</b> ` : ''}${text}</p>`)}
      </div>
    `
  }
}
