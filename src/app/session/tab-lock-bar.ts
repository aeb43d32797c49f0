import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import { toSheet } from '../common/route.ts'
import { saveCopyOf } from './sent-copy.ts'
import type { SheetSession } from './sheet-session.ts'
import { sessionWords } from './words.ts'

/** Says that another tab has the sheet or has changed it, where what was typed here is, and what can be done. */
@customElement('tab-lock-bar')
export class TabLockBar extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      :host {
        margin-block: 0.9rem 0.3rem;
        padding-inline-start: 0.7rem;
        border-inline-start: 4px solid var(--ink);
      }
      .presses {
        margin-block-start: 0.5rem;
      }
    `,
  ]

  @property({ attribute: false }) session!: SheetSession
  @state() private failure = ''

  private async saveCopy(): Promise<void> {
    try {
      location.hash = toSheet(await saveCopyOf(this.session))
    } catch (error) {
      this.failure = (error as Error).message
    }
  }

  private showRevisions(): void {
    this.dispatchEvent(new CustomEvent('revisions-asked', { bubbles: true, composed: true }))
  }

  private rescueText(): string {
    if (this.session.rescued.get() !== undefined) return sessionWords.rescued
    return this.session.lockState.get() === 'changed' ? sessionWords.notRescued : ''
  }

  override render(): TemplateResult {
    const state = this.session.lockState.get()
    const rescued = this.session.rescued.get() !== undefined
    return html`
      <p role="alert">${state === 'here' ? '' : sessionWords[state]} ${this.rescueText()}</p>
      <div class="presses">
        ${
          state === 'here'
            ? nothing
            : html`
                <button type="button" class="press primary" @click=${() => void this.session.takeOver()}>
                  ${state === 'elsewhere' ? sessionWords.takeOver : sessionWords.takeBack}
                </button>
                <button type="button" class="press" @click=${() => void this.saveCopy()}>${sessionWords.saveCopy}</button>
              `
        }
        ${
          rescued
            ? html`<button type="button" class="press" @click=${() => this.showRevisions()}>${sessionWords.showRescued}</button>`
            : nothing
        }
      </div>
      ${this.failure ? html`<p role="alert">${this.failure}</p>` : nothing}
    `
  }
}
