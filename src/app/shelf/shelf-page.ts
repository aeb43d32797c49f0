import { FIGURES } from 'virtual:shelf-figures'
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { field, fold, shared } from '../../cells/style/styles.ts'
import { newId } from '../../storage/store/store.ts'
import type { Store, Summary } from '../../storage/store/types.ts'
import { cellsText, when } from '../common/words.ts'
import { MOMENTS } from '../common/moments.ts'
import { pageStyle } from '../common/page-style.ts'
import { toNew, toSheet } from '../common/route.ts'
import { ANSWERS, type Answer, EMPTY } from '../templates/templates.ts'
import { ENTRIES, found, isTitled } from './shelf-find.ts'
import { shelfStyle } from './shelf-style.ts'

/** So many kept sheets stand open to view; older ones are folded away. */
const SHOWN = 4

/** The page one starts from: the question, the sheets kept here, and a way to open a file. */
@customElement('shelf-page')
export class ShelfPage extends LitElement {
  static override styles = [shared, field, fold, pageStyle, shelfStyle]

  @property({ attribute: false }) store!: Store
  /** What could not be opened, and why. */
  @property() trouble = ''
  /** What came in. */
  @property() said = ''
  /** Another one: what is kept has changed, so it is listed again. */
  @property({ attribute: false }) arrival: unknown
  @state() private sheets: readonly Summary[] = []
  /** What is sought, in the words of whoever seeks. */
  @state() private query = ''
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
          <span class="small quiet">${cellsText(sheet.cells)}, saved ${when(new Date(sheet.changed))}</span>
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

  private seek(query: string): void {
    this.query = query
  }

  /** One question, asked in two ways: what there mostly is, to be pressed, and a field for anything else. */
  private question(): TemplateResult {
    return html`
      <div class="presses got" role="group" aria-label="What you have got">
        ${ENTRIES.map(
          ([said, query]) => html`
            <button
              type="button"
              class="press"
              aria-pressed=${this.query === query}
              @click=${() => this.seek(this.query === query ? '' : query)}
            >${said}</button>
          `,
        )}
        <a class="press" href=${`${toNew(EMPTY)}/build`}>Something else, on an empty sheet</a>
      </div>
      <form role="search" @submit=${(event: Event) => event.preventDefault()}>
        <label for="query">Or say it in your own words</label>
        <input
          id="query"
          class="field"
          type="search"
          autocomplete="off"
          placeholder="glare, book, stamp, evenness"
          .value=${this.query}
          @input=${(event: Event) => this.seek((event.target as HTMLInputElement).value)}
        >
      </form>
    `
  }

  private answer({ key, answer, about }: Answer): TemplateResult {
    const { src, words } = FIGURES[key] ?? { src: '', words: '' }
    return html`
      <li>
        <a class="answer drawn" href=${toNew(key)}>
          <span class="figure">${src ? html`<img src=${src} alt="" loading="lazy" decoding="async">` : nothing}</span>
          <span>
            <b>${answer}</b>
            <span class="quiet">${about}</span>
            ${words ? html`<span class="small quiet told">In the example: ${words}</span>` : nothing}
          </span>
        </a>
      </li>
    `
  }

  private templates(): TemplateResult {
    const { answers, whole } = found(ANSWERS, this.query)
    const groups = MOMENTS.map(([moment, said]) => ({ said, answers: answers.filter((one) => one.moment === moment) }))
    const sought = this.query.trim()
    return html`
      <p class="unseen" role="status">${sought === '' ? '' : howMany(answers.length)}</p>
      ${
        answers.length === 0
          ? html`<p class="none">
              Nothing here answers to «${sought}». Try another word for it,
              <button type="button" class="word" @click=${() => this.seek('')}>see them all</button>, or start from
              <a class="word" href=${`${toNew(EMPTY)}/build`}>an empty sheet</a>.
            </p>`
          : nothing
      }
      ${
        answers.length > 0 && !whole
          ? html`<p class="none">Nothing here answers to all of «${sought}». These come nearest:</p>`
          : nothing
      }
      ${groups.map(({ said, answers }) =>
        answers.length === 0
          ? nothing
          : html`<section aria-label=${said}>
              <h2>${said}</h2>
              <ul class="answers">${repeat(
                answers,
                ({ key }) => key,
                (one) => this.answer(one),
              )}</ul>
            </section>`,
      )}
    `
  }

  /** The latest stand open; what is sought is looked for in all. */
  private keptSheets(): TemplateResult | typeof nothing {
    const sought = this.query.trim() !== ''
    const sheets = sought ? this.sheets.filter(({ title }) => isTitled(title, this.query)) : this.sheets
    if (sheets.length === 0) return nothing
    const list = (some: readonly Summary[]): TemplateResult => html`
      <ul>${repeat(
        some,
        ({ id }) => id,
        (sheet) => this.kept(sheet),
      )}</ul>
    `
    const older = sheets.slice(SHOWN)
    return html`
      <section aria-label="Your sheets">
        <h2>Your sheets</h2>
        ${list(sheets.slice(0, SHOWN))}
        ${
          older.length > 0
            ? html`<details ?open=${sought}>
                <summary>${older.length === 1 ? 'One older sheet' : `${older.length} older sheets`}</summary>
                ${list(older)}
              </details>`
            : nothing
        }
      </section>
    `
  }

  override render(): TemplateResult {
    return html`
      <main>
        ${this.trouble ? html`<p class="trouble" role="alert">${this.trouble}</p>` : nothing}
        ${this.said ? html`<p class="trouble" role="status">${this.said}</p>` : nothing}
        <h1>What have you got?</h1>
        ${this.question()} ${this.keptSheets()} ${this.templates()}
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

const howMany = (n: number): string => (n === 0 ? 'Nothing found.' : n === 1 ? 'One answer.' : `${n} answers.`)
