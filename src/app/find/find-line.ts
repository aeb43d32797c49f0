import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { labelOf } from '../../cells/shared/cell-view.ts'
import { field, shared } from '../../cells/style/styles.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { findIn, type Hit } from './find-hits.ts'
import { findWords as words } from './words.ts'

/** The search waits for a pause in typing of this many milliseconds. */
const PAUSE_MS = 120
const LONGEST_LABEL = 60

/** Searches the open sheet and goes from one place where the words are found to the next. */
@customElement('find-line')
export class FindLine extends LitElement {
  static override styles = [
    shared,
    field,
    css`
      :host {
        position: sticky;
        /* Below the head, which stays as well. */
        inset-block-start: 104px;
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
      .found {
        min-block-size: 1.4rem;
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  /** Brings a cell into view on the face that is open; without one, nothing is marked there. */
  @property({ attribute: false }) show!: (id?: string) => void
  @state() private query = ''
  @state() private hits: readonly Hit[] = []
  @state() private at = 0
  /** Whether something was typed that has not been searched for yet. */
  @state() private isTyping = false
  @query('input') private input!: HTMLInputElement | null
  private pause: ReturnType<typeof setTimeout> | undefined
  private unwatch: (() => void) | undefined

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearTimeout(this.pause)
    this.unwatch?.()
    this.show()
  }

  override firstUpdated(): void {
    // An edit of the sheet may change what is found.
    this.unwatch = this.open.sheet.watch(() => this.lookLater(false))
  }

  /** Moves the focus to the field and selects the previous words. */
  take(): void {
    this.input?.focus()
    this.input?.select()
  }

  private type(query: string): void {
    this.query = query
    this.isTyping = true
    this.lookLater(true)
  }

  private lookLater(leads: boolean): void {
    clearTimeout(this.pause)
    this.pause = setTimeout(() => this.look(leads || this.isTyping), PAUSE_MS)
  }

  /** Searches the sheet; the current place stays current while it is still found. */
  private look(leads: boolean): void {
    clearTimeout(this.pause)
    this.isTyping = false
    const current = this.hits[this.at]?.id
    this.hits = findIn(this.open.sheet, this.query)
    this.at = Math.max(
      0,
      this.hits.findIndex(({ id }) => id === current),
    )
    if (leads) this.show(this.hits[this.at]?.id)
  }

  private go(by: 1 | -1): void {
    const { length } = this.hits
    // The first Enter after typing goes to the first place, not past it.
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

  private foundText(): string {
    if (this.query.trim() === '' || this.isTyping) return ''
    const hit = this.hits[this.at]
    const cell = hit && this.open.sheet.cell(hit.id)
    if (!hit || !cell) return words.nothing
    const label = labelOf(cell)
    const called = label.length > LONGEST_LABEL ? `${label.slice(0, LONGEST_LABEL - 1)}…` : label
    return words.found(this.at + 1, this.hits.length, called, hit.place)
  }

  override render(): TemplateResult {
    const press = (name: string, act: () => void, can = true): TemplateResult =>
      html`<button type="button" class="word" aria-disabled=${!can} @click=${() => can && act()}>${name}</button>`
    const several = this.hits.length > 1
    return html`
      <form role="search" aria-label=${words.form} @submit=${(event: Event) => event.preventDefault()} @keydown=${this.keys}>
        <label>
          <span>${words.find}</span>
          <input
            class="field"
            type="search"
            autocomplete="off"
            autocapitalize="off"
            spellcheck="false"
            placeholder=${words.what}
            @input=${(event: Event) => this.type((event.target as HTMLInputElement).value)}
          >
        </label>
        <div class="words">
          ${press(words.next, () => this.go(1), several)} ${press(words.previous, () => this.go(-1), several)}
          ${press(words.close, () => this.close())}
        </div>
      </form>
      <p class="found small" role="status">${this.foundText()}</p>
    `
  }
}
