import { FIGURES } from 'virtual:shelf-figures'
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { field, fold, shared } from '../../cells/style/styles.ts'
import type { Store, Summary } from '../../storage/store/types.ts'
import { pageStyle } from '../common/page-style.ts'
import { TO_ANSWERS, toNew, toStart } from '../common/route.ts'
import { MOMENTS } from '../common/words.ts'
import { EMPTY, SHELF, type ShelfEntry } from '../templates/templates.ts'
import { found } from './shelf-find.ts'
import { shelfStyle } from './shelf-style.ts'
import { SEARCHES, shelfWords as words } from './words.ts'

/** The start page: what is being photographed, the saved sheets, and a way to open a file. */
@customElement('shelf-page')
export class ShelfPage extends LitElement {
  static override styles = [shared, field, fold, pageStyle, shelfStyle]

  @property({ attribute: false }) store!: Store
  /** Why something could not be opened. */
  @property() problem = ''
  /** What was opened or added. */
  @property() said = ''
  /** A new value means that the saved sheets have changed and are listed again. */
  @property({ attribute: false }) arrival: unknown
  @state() private sheets: readonly Summary[] = []
  /** The search words. */
  @state() private query = ''
  /** The sheets removed while this page is open: each can be put back in its place. */
  @state() private removed: ReadonlySet<string> = new Set()

  /** Whether the list of removed sheets was ever opened; it then stays, with its messages. */
  @state() private binOpen = false
  @state() private bin: readonly Summary[] = []
  /** That sheets were changed since the last backup, where that is long ago. */
  @state() private backupDue = ''

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('arrival')) void this.load()
  }

  private async load(): Promise<void> {
    try {
      const listed = await this.store.list()
      const removed = await this.store.listRemoved()
      const gone = removed.filter(({ id }) => this.removed.has(id))
      this.bin = removed.filter(({ id }) => !this.removed.has(id))
      this.sheets = [...listed, ...gone].sort((a, b) => b.changed - a.changed)
      if (this.sheets.length > 0 && this.store.persistent)
        this.backupDue = await (await import('./backup-reminder.ts')).backupReminder(this.store, this.sheets)
    } catch (error) {
      this.problem = (error as Error).message
    }
  }

  private readonly openBin = (): void => {
    this.binOpen = true
    void import('./removed/removed-sheets.ts')
  }

  private chosen(event: Event): void {
    const input = event.target as HTMLInputElement
    const files = [...(input.files ?? [])]
    if (files.length > 0)
      this.dispatchEvent(new CustomEvent('files-chosen', { detail: files, bubbles: true, composed: true }))
    input.value = ''
  }

  private search(query: string): void {
    this.query = query
  }

  /** The question and its answers: buttons for what is most common, and a field for anything else. */
  private question(): TemplateResult {
    return html`
      <div class="presses got" role="group" aria-label=${words.choices}>
        ${SEARCHES.map(
          ([said, query]) => html`
            <button
              type="button"
              class="press"
              aria-pressed=${this.query === query}
              @click=${() => this.search(this.query === query ? '' : query)}
            >${said}</button>
          `,
        )}
        <a class="press" href=${`${toNew(EMPTY)}/build`}>${words.other}</a>
        <a class="press primary" href=${TO_ANSWERS}>${words.answers}</a>
      </div>
      <form role="search" @submit=${(event: Event) => event.preventDefault()}>
        <label for="query">${words.search}</label>
        <input
          id="query"
          class="field"
          type="search"
          autocomplete="off"
          placeholder=${words.examples}
          .value=${this.query}
          @input=${(event: Event) => this.search((event.target as HTMLInputElement).value)}
        >
      </form>
    `
  }

  private entry({ key, answer, about }: ShelfEntry): TemplateResult {
    const { src, words: figures } = FIGURES[key] ?? { src: '', words: '' }
    return html`
      <li>
        <a class="answer drawn" href=${toNew(key)}>
          <span class="figure">${src ? html`<img src=${src} alt="" loading="lazy" decoding="async">` : nothing}</span>
          <span>
            <b>${answer}</b>
            <span class="quiet">${about}</span>
            ${figures ? html`<span class="small quiet example">${words.inExample(figures)}</span>` : nothing}
          </span>
        </a>
        <div class="words ways">
          <a class="word" href=${toStart(key)} aria-label=${words.way(words.start, answer)}>${words.start}</a>
          <a class="word" href=${toNew(key)} aria-label=${words.way(words.seeExample, answer)}>${words.seeExample}</a>
        </div>
      </li>
    `
  }

  private templates(): TemplateResult {
    const { entries, whole } = found(SHELF, this.query)
    const groups = MOMENTS.map(([moment, said]) => ({ said, entries: entries.filter((one) => one.moment === moment) }))
    const query = this.query.trim()
    return html`
      <p class="unseen" role="status">${query === '' ? '' : words.found(entries.length)}</p>
      ${
        entries.length === 0
          ? html`<p class="none">
              ${words.noMatch(query)}<button type="button" class="word" @click=${() => this.search('')}>${words.showAll}</button>${words.orStart}<a class="word" href=${`${toNew(EMPTY)}/build`}>${words.emptySheet}</a>.
            </p>`
          : nothing
      }
      ${entries.length > 0 && !whole ? html`<p class="none">${words.partlyMatches(query)}</p>` : nothing}
      ${groups.map(({ said, entries }) =>
        entries.length === 0
          ? nothing
          : html`<section aria-label=${said}>
              <h2>${said}</h2>
              <ul class="answers">${repeat(
                entries,
                ({ key }) => key,
                (one) => this.entry(one),
              )}</ul>
            </section>`,
      )}
    `
  }

  /** The list is fetched where there are sheets. */
  private savedSheets(): TemplateResult | typeof nothing {
    if (this.sheets.length === 0) return nothing
    void import('./sheet-list.ts')
    return html`<sheet-list
      .store=${this.store}
      .sheets=${this.sheets}
      .removed=${this.removed}
      .query=${this.query}
      @sheets-changed=${() => void this.load()}
      @sheet-removed=${({ detail }: CustomEvent<string>) => {
        this.removed = new Set([...this.removed, detail])
      }}
      @sheet-restored=${({ detail }: CustomEvent<string>) => {
        this.removed = new Set([...this.removed].filter((one) => one !== detail))
      }}
    ></sheet-list>`
  }

  override render(): TemplateResult {
    return html`
      <main>
        ${this.problem ? html`<p class="problem" role="alert">${this.problem}</p>` : nothing}
        ${this.said ? html`<p class="problem" role="status">${this.said}</p>` : nothing}
        ${this.backupDue ? html`<p class="problem">${this.backupDue}</p>` : nothing}
        <p class="quiet">${words.about}</p>
        <h1>${words.question}</h1>
        ${this.question()} ${this.savedSheets()} ${this.templates()}
        <div class="foot">
          <button type="button" class="press" @click=${() => this.renderRoot.querySelector<HTMLInputElement>('#file')?.click()}>${words.openFile}</button>
          <span class="quiet">${words.aboutFiles}</span>
          <input id="file" type="file" multiple accept=".json,application/json" hidden @change=${this.chosen}>
        </div>
        ${this.folds()}
      </main>
    `
  }

  private folds(): TemplateResult | typeof nothing {
    if (this.sheets.length + this.bin.length === 0 && !this.binOpen) return nothing
    return html`
      <div class="folds">
        ${
          this.bin.length > 0 || this.binOpen
            ? html`
                <details @toggle=${this.openBin}>
                  <summary>${words.removedSheets(this.bin.length)}</summary>
                  <removed-sheets .store=${this.store} .sheets=${this.bin} @sheets-changed=${() => void this.load()}></removed-sheets>
                </details>
              `
            : nothing
        }
        <details @toggle=${() => void import('./studio/studio-shelf.ts')}>
          <summary>${words.studioTemplates}</summary>
          <studio-shelf .store=${this.store}></studio-shelf>
        </details>
        <details @toggle=${() => void import('./backup-panel.ts')}>
          <summary>${words.backup}</summary>
          <backup-panel .store=${this.store} @backup-made=${() => void this.load()}></backup-panel>
        </details>
      </div>
    `
  }
}
