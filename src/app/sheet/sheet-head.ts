import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { requestChange } from '../../cells/shared/cell-view.ts'
import { field, shared } from '../../cells/style/styles.ts'
import { checkSummaryText, UNTITLED_SHEET } from '../common/words.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import type { Autosave } from '../session/autosave.ts'
import './section-problems.ts'
import { sheetWords as words } from './words.ts'

/** The head of an open worksheet: its title, the job, the state of its checks and when it was last saved. */
@customElement('sheet-head')
export class SheetHead extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    field,
    css`
      :host {
        border-block-end: 2px solid var(--ink);
        padding-block-end: 0.35rem;
      }
      h1 {
        font-size: 1.6rem;
        line-height: 1.2;
        text-wrap: balance;
        overflow-wrap: anywhere;
      }
      h1 .of {
        padding-inline-start: 0.5em;
        font-size: 1rem;
        font-weight: 400;
        color: var(--quiet);
      }
      h1 .field {
        font-weight: 700;
        padding-block: 0.1rem;
      }
      .job {
        display: flex;
        align-items: center;
        gap: 0.6rem;
        margin-block-start: 0.3rem;
      }
      .job .field {
        border-color: transparent;
        border-block-end-color: var(--rule);
        background: none;
        padding-inline: 0.2rem;
        max-inline-size: 30rem;
      }
      .job .field:hover,
      .job .field:focus {
        border-color: var(--edge);
        background: var(--well);
      }
      .foot {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        column-gap: 0.8rem;
      }
      .saved {
        margin-inline-end: auto;
        min-block-size: 44px;
        display: inline-flex;
        align-items: center;
      }
      .failed {
        padding-inline-start: 0.7rem;
        border-inline-start: 4px solid var(--ink);
        margin-block: 0.3rem 0.6rem;
      }
      .failed .press {
        margin-block: 0.5rem 0.2rem;
        margin-inline-end: 0.8rem;
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @property({ attribute: false }) autosave!: Autosave
  @property({ type: Boolean }) build = false
  /** At the stand it says what is shown, and takes no room for what is not set there. */
  @property({ type: Boolean }) stand = false
  @property({ type: Boolean }) looksBack = false
  @property({ type: Boolean }) canFind = false
  @property({ type: Boolean }) finds = false
  @state() private saved = ''

  private tell(name: string): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, composed: true }))
  }

  focusFind(): void {
    this.renderRoot.querySelector<HTMLElement>('.find')?.focus()
  }

  private savedText(): string {
    if (this.open.frozen.get()) return words.readOnly
    const keeping = this.autosave.saveState.get()
    if (keeping.state === 'saved') return words.saved(keeping.at)
    if (keeping.state === 'saving') return words.saving
    return keeping.state === 'failed' ? words.notSaved : words.unchanged
  }

  private async save(): Promise<void> {
    try {
      const { saveFile } = await import('../../storage/exchange/file.ts')
      this.saved = (await saveFile(this.open.sheet.worksheet)) ? words.savedFile : ''
    } catch (error) {
      this.saved = (error as Error).message
    }
  }

  private history(word: string, can: boolean, event: string): TemplateResult {
    // Not `disabled`, which would drop the focus when the last step is undone.
    return html`<button type="button" class="word" aria-disabled=${!can} @click=${() => can && this.tell(event)}>${word}</button>`
  }

  private job(job: string): TemplateResult {
    return html`
      <div class="job">
        <label class="quiet" for="job">${words.job}</label>
        <input
          id="job"
          class="field"
          type="text"
          autocomplete="off"
          placeholder=${words.aboutJob}
          .value=${live(job)}
          @input=${(event: Event) => requestChange(this, { do: 'job', job: (event.target as HTMLInputElement).value }, 'job')}
        >
      </div>
    `
  }

  override render(): TemplateResult {
    this.open.changed.get()
    const { worksheet, checkSummary, canUndo, canRedo } = this.open.sheet
    const frozen = this.open.frozen.get()
    const keeping = this.autosave.saveState.get()
    const trouble = checkSummary.errors + checkSummary.fail + checkSummary.marginal + checkSummary.waiting > 0
    const summary = checkSummaryText(checkSummary)
    return html`
      ${
        this.build
          ? html`<h1>
              <input
                class="field"
                type="text"
                aria-label=${words.title}
                .value=${live(worksheet.title)}
                @input=${(event: Event) => requestChange(this, { do: 'title', title: (event.target as HTMLInputElement).value }, 'title')}
              >
            </h1>`
          : html`<h1>${worksheet.title || UNTITLED_SHEET}${this.stand && worksheet.job ? html` <span class="of">${worksheet.job}</span>` : nothing}</h1>`
      }
      ${this.stand ? nothing : this.job(worksheet.job ?? '')}
      <div class="foot">
        ${trouble ? html`<button type="button" class="word" @click=${() => this.tell('show-trouble')}>${summary}</button>` : html`<span>${summary}</span>`}
        <span class="quiet saved">${this.savedText()}</span>
        <div class="words">
          ${this.history(words.undo, canUndo && !frozen, 'undo-asked')} ${this.history(words.redo, canRedo && !frozen, 'redo-asked')}
          ${
            this.canFind
              ? html`<button type="button" class="word find" aria-expanded=${this.finds} @click=${() => this.tell('find-asked')}>${words.find}</button>`
              : nothing
          }
          ${
            this.stand
              ? nothing
              : html`<button type="button" class="word" aria-expanded=${this.looksBack} @click=${() => this.tell('revisions-asked')}>${words.revisions}</button>`
          }
        </div>
      </div>
      ${trouble && !this.stand ? html`<section-troubles .open=${this.open}></section-troubles>` : nothing}
      ${
        keeping.state === 'failed' && !frozen
          ? html`
              <div class="failed">
                <p role="alert">${keeping.message}</p>
                <button type="button" class="press" @click=${() => void this.save()}>${words.saveFile}</button>
                <span role="status">${this.saved}</span>
              </div>
            `
          : nothing
      }
    `
  }
}
