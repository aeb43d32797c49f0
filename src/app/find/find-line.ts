import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { labelOf } from '../../cells/shared/cell-view.ts'
import { field, shared } from '../../cells/style/styles.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { findIn, type Hit } from './find-hits.ts'

/** Typing goes first: a sheet is looked through once nothing was typed for so long. */
const PAUSE_MS = 120
const LONGEST_LABEL = 60

/** What is sought in the sheet, and the way from one place it is found in to the next. */
@customElement('find-line')
export class FindLine extends LitElement {
  static override styles = [
    shared,
    field,
    css`
      :host {
        position: sticky;
        inset-block-start: 0;
        z-index: 2;
        /* Over all that slides under it, the rings of the focus too. */
        margin-inline: -0.9rem;
        padding-inline: 0.9rem;
        padding-block: 0.5rem;
        background: var(--sheet);
        border-block-end: 2px solid var(--ink);
      }
      form {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        column-gap: 1.1rem;
      }
      label {
        display: flex;
        flex: 1 1 16rem;
        align-items: center;
        gap: 0.7rem;
        max-inline-size: 30rem;
      }
      input,
      input::-webkit-search-cancel-button {
        appearance: none;
      }
      .told {
        min-block-size: 1.4rem;
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  /** Brings a cell into view on the face that is open; without one, nothing is marked there. */
  @property({ attribute: false }) show!: (id?: string) => void
  @state() private words = ''
  @state() private hits: readonly Hit[] = []
  @state() private at = 0
  /** Typed, and not yet looked for. */
  @state() private isTyping = false
  @query('input') private input!: HTMLInputElement
  private pause: ReturnType<typeof setTimeout> | undefined
  private unwatch: (() => void) | undefined

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearTimeout(this.pause)
    this.unwatch?.()
    this.show()
  }

  override firstUpdated(): void {
    // What is changed meanwhile may be found, or no longer.
    this.unwatch = this.open.sheet.watch(() => this.lookLater(false))
  }

  /** The focus, with what was sought before marked to be typed over. */
  take(): void {
    this.input.focus()
    this.input.select()
  }

  private type(words: string): void {
    this.words = words
    this.isTyping = true
    this.lookLater(true)
  }

  private lookLater(leads: boolean): void {
    clearTimeout(this.pause)
    this.pause = setTimeout(() => this.look(leads || this.isTyping), PAUSE_MS)
  }

  /** Looks through the sheet; the place in hand stays in hand as long as it is still found. */
  private look(leads: boolean): void {
    clearTimeout(this.pause)
    this.isTyping = false
    const inHand = this.hits[this.at]?.id
    this.hits = findIn(this.open.sheet, this.words)
    this.at = Math.max(
      0,
      this.hits.findIndex(({ id }) => id === inHand),
    )
    if (leads) this.show(this.hits[this.at]?.id)
  }

  private go(by: 1 | -1): void {
    const { length } = this.hits
    // The first key after typing leads to the first place, not past it.
    if (this.isTyping) this.look(true)
    else if (length > 0) {
      this.at = (this.at + by + length) % length
      this.show(this.hits[this.at]?.id)
    }
  }

  private close(): void {
    this.dispatchEvent(new CustomEvent<string | null>('find-left', { detail: this.hits[this.at]?.id ?? null }))
  }

  private keys(event: KeyboardEvent): void {
    if (event.key === 'Escape') this.close()
    else if (event.key === 'Enter' && !event.isComposing) this.go(event.shiftKey ? -1 : 1)
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  private told(): string {
    if (this.words.trim() === '' || this.isTyping) return ''
    const hit = this.hits[this.at]
    const cell = hit && this.open.sheet.cell(hit.id)
    if (!hit || !cell) return 'Nothing in this sheet holds that.'
    const label = labelOf(cell)
    const called = label.length > LONGEST_LABEL ? `${label.slice(0, LONGEST_LABEL - 1)}…` : label
    return `${this.at + 1} of ${this.hits.length}: ${called}, in ${hit.place}.`
  }

  override render(): TemplateResult {
    const word = (name: string, act: () => void, can = true): TemplateResult =>
      html`<button type="button" class="word" aria-disabled=${!can} @click=${() => can && act()}>${name}</button>`
    const several = this.hits.length > 1
    return html`
      <form role="search" aria-label="In this sheet" @submit=${(event: Event) => event.preventDefault()} @keydown=${this.keys}>
        <label>
          <span>Find</span>
          <input
            class="field"
            type="search"
            autocomplete="off"
            autocapitalize="off"
            spellcheck="false"
            placeholder="a label, name, formula, figure or note"
            @input=${(event: Event) => this.type((event.target as HTMLInputElement).value)}
          >
        </label>
        <div class="words">
          ${word('Next', () => this.go(1), several)} ${word('The one before', () => this.go(-1), several)}
          ${word('Close', () => this.close())}
        </div>
      </form>
      <p class="told small" role="status">${this.told()}</p>
    `
  }
}
