import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { shared } from '../cells/styles.ts'
import { newId, type Store, type Summary } from '../storage/store.ts'
import { cellsInWords, when } from './in-words.ts'
import { toNew, toSheet } from './route.ts'
import { ANSWERS, EMPTY } from './templates.ts'

/** The page one starts from: the question, the sheets kept here, and a way to open a file. */
@customElement('shelf-page')
export class ShelfPage extends LitElement {
  static override styles = [
    shared,
    css`
      main {
        max-inline-size: 70rem;
        margin-inline: auto;
        padding: clamp(1rem, 3vw, 1.8rem) clamp(1rem, 4vw, 2.4rem) 2rem;
        background: var(--sheet);
        border: 1px solid var(--edge);
      }
      @media (max-width: 71rem) {
        main {
          border-inline: 0;
        }
      }
      h1 {
        font-size: 1.6rem;
        line-height: 1.2;
        padding-block-end: 0.7rem;
        border-block-end: 2px solid var(--ink);
      }
      h2 {
        font-size: 1.15rem;
        margin-block-start: 2.2rem;
        padding-block-end: 0.4rem;
        border-block-end: 2px solid var(--ink);
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .answers {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 26rem), 1fr));
        column-gap: 3rem;
      }
      li {
        border-block-end: 1px solid var(--rule);
      }
      .answer {
        display: block;
        padding-block: 0.85rem;
        color: inherit;
        text-decoration: none;
      }
      .answer b {
        display: block;
        font-size: 1.15rem;
        text-decoration: underline;
        text-decoration-thickness: 1px;
        text-underline-offset: 0.25em;
      }
      .answer:hover b {
        text-decoration-thickness: 2px;
      }
      .kept {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-items: center;
        column-gap: 1.2rem;
        min-block-size: 3.6rem;
        padding-block: 0.2rem;
      }
      .kept .answer {
        padding-block: 0.45rem;
      }
      .kept .answer b {
        font-size: 1rem;
        overflow-wrap: anywhere;
      }
      .foot {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.6rem 1.2rem;
        margin-block-start: 1.6rem;
      }
      .folds {
        margin-block-start: 1.2rem;
      }
      summary {
        display: flex;
        align-items: center;
        min-block-size: 44px;
        inline-size: fit-content;
        cursor: pointer;
        text-decoration: underline;
        text-decoration-thickness: 1px;
        text-underline-offset: 0.28em;
        list-style: none;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      .trouble {
        margin-block-end: 1rem;
        padding-inline-start: 0.7rem;
        border-inline-start: 4px solid var(--ink);
      }
      @container page (max-width: 32rem) {
        .kept {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ]

  @property({ attribute: false }) store!: Store
  /** What could not be opened, and why. */
  @property() trouble = ''
  /** What came in. */
  @property() said = ''
  /** Another one: what is kept has changed, so it is listed again. */
  @property({ attribute: false }) arrival: unknown
  @state() private sheets: readonly Summary[] = []
  /** Removed while this page stands open: each can be put back where it was. */
  @state() private removed: ReadonlySet<string> = new Set()

  /** Once opened it stays, for what is said in it. */
  @state() private binOpen = false
  @state() private bin: readonly Summary[] = []

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
    } catch (error) {
      this.trouble = (error as Error).message
    }
  }

  private async change(work: () => Promise<unknown>): Promise<void> {
    try {
      await work()
    } catch (error) {
      this.trouble = (error as Error).message
    }
    await this.load()
    await this.updateComplete
  }

  private async takeOut(id: string): Promise<void> {
    this.removed = new Set([...this.removed, id])
    await this.change(() => this.store.remove(id))
    this.renderRoot.querySelector<HTMLElement>(`[data-back="${id}"]`)?.focus()
  }

  private async putBack(id: string): Promise<void> {
    this.removed = new Set([...this.removed].filter((one) => one !== id))
    await this.change(() => this.store.restore(id))
    this.renderRoot.querySelector<HTMLElement>(`[data-open="${id}"]`)?.focus()
  }

  private async duplicate(id: string): Promise<void> {
    const copy = newId()
    await this.change(async () => {
      const worksheet = await this.store.load(id)
      if (worksheet) await this.store.save(copy, { ...worksheet, title: `${worksheet.title}, copy` })
    })
    this.renderRoot.querySelector<HTMLElement>(`[data-open="${copy}"]`)?.focus()
  }

  private kept(sheet: Summary): TemplateResult {
    const title = sheet.title || 'Untitled worksheet'
    if (this.removed.has(sheet.id))
      return html`
        <li class="kept">
          <span class="quiet">«${title}» is removed.</span>
          <button type="button" class="word" data-back=${sheet.id} @click=${() => void this.putBack(sheet.id)}>Undo</button>
        </li>
      `
    return html`
      <li class="kept">
        <a class="answer" data-open=${sheet.id} href=${toSheet(sheet.id)}>
          <b>${title}</b>
          <span class="small quiet">${cellsInWords(sheet.cells)}, kept ${when(new Date(sheet.changed))}</span>
        </a>
        <div class="words">
          <button type="button" class="word" aria-label=${`Duplicate ${title}`} @click=${() => void this.duplicate(sheet.id)}>Duplicate</button>
          <button type="button" class="word" aria-label=${`Remove ${title}`} @click=${() => void this.takeOut(sheet.id)}>Remove</button>
        </div>
      </li>
    `
  }

  private readonly openBin = (): void => {
    this.binOpen = true
    void import('./removed-sheets.ts')
  }

  private chosen(event: Event): void {
    const input = event.target as HTMLInputElement
    const files = [...(input.files ?? [])]
    if (files.length > 0)
      this.dispatchEvent(new CustomEvent('files-chosen', { detail: files, bubbles: true, composed: true }))
    input.value = ''
  }

  override render(): TemplateResult {
    const answers = [
      ...ANSWERS,
      { key: EMPTY, answer: 'Something else', about: 'An empty sheet, to build with your own cells and formulas.' },
    ]
    return html`
      <main>
        ${this.trouble ? html`<p class="trouble" role="alert">${this.trouble}</p>` : nothing}
        ${this.said ? html`<p class="trouble" role="status">${this.said}</p>` : nothing}
        <h1>What have you got?</h1>
        <ul class="answers">
          ${answers.map(
            ({ key, answer, about }) => html`
              <li>
                <a class="answer" href=${key === EMPTY ? `${toNew(key)}/build` : toNew(key)}><b>${answer}</b><span class="quiet">${about}</span></a>
              </li>
            `,
          )}
        </ul>
        ${
          this.sheets.length > 0
            ? html`
                <h2>Your sheets</h2>
                <ul>${repeat(
                  this.sheets,
                  ({ id }) => id,
                  (sheet) => this.kept(sheet),
                )}</ul>
              `
            : nothing
        }
        <div class="foot">
          <button type="button" class="press" @click=${() => this.renderRoot.querySelector<HTMLInputElement>('#file')?.click()}>Open a file</button>
          <span class="quiet">or several, or a backup; or drop them anywhere on the page</span>
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
                  <summary>Removed sheets (${this.bin.length})</summary>
                  <removed-sheets .store=${this.store} .sheets=${this.bin} @sheets-changed=${() => void this.load()}></removed-sheets>
                </details>
              `
            : nothing
        }
        <details @toggle=${() => void import('./backup-panel.ts')}>
          <summary>Backup</summary>
          <backup-panel .store=${this.store}></backup-panel>
        </details>
      </div>
    `
  }
}
