import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { LockState } from '../../storage/store/tab-lock.ts'
import { toSheet } from '../common/route.ts'
import type { SheetSession } from './sheet-session.ts'

const WORDS: Readonly<Record<Exclude<LockState, 'here'>, string>> = {
  elsewhere: 'This sheet is open in another tab or window. Here it can be read; what is typed there is shown here too.',
  taken: 'Another tab or window has taken this sheet over. Here it can be read; what is typed there is shown here too.',
  changed:
    'Another tab or window changed this sheet meanwhile, so what was typed here last is not in it. It is kept among the revisions.',
}

/** Says that another tab has the sheet, and what can be done. */
@customElement('tab-lock-bar')
export class TabLockBar extends LitElement {
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
  @property() lockState: Exclude<LockState, 'here'> = 'elsewhere'

  private async saveCopy(): Promise<void> {
    try {
      location.hash = toSheet(await this.session.saveCopy())
    } catch (error) {
      this.session.autosave.saveState.set({ state: 'failed', message: (error as Error).message })
    }
  }

  override render(): TemplateResult {
    return html`
      <p role="alert">${WORDS[this.lockState]}</p>
      <div class="presses">
        <button type="button" class="press" @click=${() => void this.session.takeOver()}>
          <b>${this.lockState === 'elsewhere' ? 'Take over' : 'Take it back'}</b>
        </button>
        <button type="button" class="press" @click=${() => void this.saveCopy()}>Save a copy</button>
      </div>
    `
  }
}
