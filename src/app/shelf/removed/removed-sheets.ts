import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { shared } from '../../../cells/style/styles.ts'
import type { Store, Summary } from '../../../storage/store/types.ts'
import { UNTITLED_SHEET } from '../../../worksheet/document/words.ts'
import { when } from '../../common/words.ts'
import { removedWords as words } from './words.ts'

/** The sheets that were removed: each can be put back, or erased for good. */
@customElement('removed-sheets')
export class RemovedSheets extends LitElement {
  static override styles = [
    shared,
    css`
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
        border-block-start: 1px solid var(--rule);
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-items: center;
        column-gap: 1.2rem;
        min-block-size: 3.2rem;
        padding-block: 0.2rem;
        border-block-end: 1px solid var(--rule);
      }
      li > span {
        padding-block: 0.3rem;
        overflow-wrap: anywhere;
      }
      .asked {
        padding-inline-start: 0.7rem;
        border-inline-start: 4px solid var(--ink);
      }
      @container page (max-width: 32rem) {
        li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ]

  @property({ attribute: false }) store!: Store
  @property({ attribute: false }) sheets: readonly Summary[] = []
  /** The sheet about to be erased, once it is confirmed. */
  @state() private asked: string | undefined
  @state() private said = ''

  private async change(work: () => Promise<void>, said: string): Promise<void> {
    try {
      await work()
      this.said = said
    } catch (error) {
      this.said = (error as Error).message
    }
    this.dispatchEvent(new CustomEvent('sheets-changed', { bubbles: true, composed: true }))
    // What was pressed is gone: the list takes the focus, so that the keyboard continues from there.
    this.renderRoot.querySelector<HTMLElement>('ul')?.focus()
  }

  private async ask(id: string | undefined): Promise<void> {
    const before = this.asked
    this.asked = id
    await this.updateComplete
    const focus = id === undefined ? `[data-erase="${before}"]` : '[data-keep]'
    this.renderRoot.querySelector<HTMLElement>(focus)?.focus()
  }

  private sheet(sheet: Summary): TemplateResult {
    const title = sheet.title || UNTITLED_SHEET
    if (this.asked === sheet.id)
      return html`
        <li class="asked">
          <span>${words.askErase(title)}</span>
          <div class="words">
            <button type="button" class="word" @click=${() => void this.change(() => this.store.erase(sheet.id), words.erased(title))}>${words.erase}</button>
            <button type="button" class="word" data-keep @click=${() => void this.ask(undefined)}>${words.doNotErase}</button>
          </div>
        </li>
      `
    return html`
      <li>
        <span>${title} <span class="small quiet">${words.removedAt(when(new Date(sheet.removed ?? 0)))}</span></span>
        <div class="words">
          <button type="button" class="word" aria-label=${words.act(words.restore, title)} @click=${() => void this.change(() => this.store.restore(sheet.id), words.restored(title))}>${words.restore}</button>
          <button type="button" class="word" data-erase=${sheet.id} aria-label=${words.act(words.erase, title)} @click=${() => void this.ask(sheet.id)}>${words.erase}</button>
        </div>
      </li>
    `
  }

  override render(): TemplateResult {
    return html`
      ${
        this.sheets.length > 0
          ? html`<ul tabindex="-1" aria-label=${words.list}>${repeat(
              this.sheets,
              ({ id }) => id,
              (sheet) => this.sheet(sheet),
            )}</ul>`
          : nothing
      }
      <p class="small" role="status">${this.said}</p>
    `
  }
}
