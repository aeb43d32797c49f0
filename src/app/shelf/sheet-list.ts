import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { field, fold, shared } from '../../cells/style/styles.ts'
import { newId } from '../../storage/store/store.ts'
import type { Store, Summary } from '../../storage/store/types.ts'
import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import { pageStyle } from '../common/page-style.ts'
import { toSheet } from '../common/route.ts'
import { when } from '../common/words.ts'
import { isNamedSo } from './shelf-find.ts'
import { savedStyle, shelfStyle } from './shelf-style.ts'
import { ORDERS, type Order, sortedSheets } from './sort-sheets.ts'
import { shelfWords as words } from './words.ts'

/** The number of saved sheets that are listed; older ones are folded away. */
const SHOWN = 4

/** The saved sheets: the job, what it is of and how its checks are; to find, sort, archive, duplicate and remove. */
@customElement('sheet-list')
export class SheetList extends LitElement {
  static override styles = [
    shared,
    field,
    fold,
    pageStyle,
    shelfStyle,
    savedStyle,
    css`
      .order {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.3rem 0.9rem;
        padding-block: 0.5rem 0;
      }
      .order .field {
        inline-size: auto;
      }
    `,
  ]

  @property({ attribute: false }) store!: Store
  /** In use, those removed while the page is open among them. */
  @property({ attribute: false }) sheets: readonly Summary[] = []
  @property({ attribute: false }) removed: ReadonlySet<string> = new Set()
  @property() query = ''
  @state() private order: Order = 'saved'
  @state() private problem = ''
  /** What gets the focus once the list is drawn again. */
  private focusNext = ''

  override updated(): void {
    const next = this.focusNext && this.renderRoot.querySelector<HTMLElement>(this.focusNext)
    if (!next) return
    this.focusNext = ''
    next.focus()
  }

  /** Changes the store; the page lists it again. */
  private async change(work: () => Promise<unknown>, focusNext: string): Promise<void> {
    this.problem = ''
    try {
      await work()
    } catch (error) {
      this.problem = (error as Error).message
    }
    this.focusNext = focusNext
    this.dispatchEvent(new CustomEvent('sheets-changed', { bubbles: true, composed: true }))
  }

  /** The page remembers which sheets were removed while it is open. */
  private say(name: 'sheet-removed' | 'sheet-restored', id: string): void {
    this.dispatchEvent(new CustomEvent<string>(name, { detail: id, bubbles: true, composed: true }))
  }

  private discard(id: string): Promise<void> {
    return this.change(async () => {
      await this.store.remove(id)
      this.say('sheet-removed', id)
    }, `[data-back="${id}"]`)
  }

  private restore(id: string): Promise<void> {
    return this.change(async () => {
      await this.store.restore(id)
      this.say('sheet-restored', id)
    }, `[data-open="${id}"]`)
  }

  private archive(id: string, archived: boolean): Promise<void> {
    return this.change(() => this.store.archive(id, archived), archived ? 'summary.archived' : `[data-open="${id}"]`)
  }

  private duplicate(id: string): Promise<void> {
    const copy = newId()
    return this.change(async () => {
      const worksheet = await this.store.load(id)
      if (worksheet) await this.store.save(copy, { ...worksheet, title: words.copyOf(worksheet.title) })
    }, `[data-open="${copy}"]`)
  }

  private saved(sheet: Summary): TemplateResult {
    const { id, job, of, checks, archived } = sheet
    const title = sheet.title || UNTITLED_SHEET
    const name = job ? `${job}, ${title}` : title
    if (this.removed.has(id))
      return html`
        <li class="saved">
          <span class="quiet">${words.removed(title)}</span>
          <button type="button" class="word" data-back=${id} @click=${() => void this.restore(id)}>${words.undo}</button>
        </li>
      `
    const act = (said: string, press: () => void): TemplateResult =>
      html`<button type="button" class="word" aria-label=${words.act(said, name)} @click=${press}>${said}</button>`
    return html`
      <li class="saved">
        <a class="answer" data-open=${id} href=${toSheet(id)}>
          ${job ? html`<span class="job">${job}</span>` : nothing}
          <b>${title}</b>${of ? html`<span class="of">${of}</span>` : nothing}
          <span class="small quiet line">
            ${checks ? html`<span class="checks">${words.checks(checks)}</span> ` : nothing}${words.savedAt(when(new Date(sheet.changed)))}
          </span>
        </a>
        <div class="words">
          ${act(words.duplicate, () => void this.duplicate(id))}
          ${
            archived === undefined
              ? act(words.archive, () => void this.archive(id, true))
              : act(words.unarchive, () => void this.archive(id, false))
          }
          ${act(words.remove, () => void this.discard(id))}
        </div>
      </li>
    `
  }

  private list(sheets: readonly Summary[]): TemplateResult {
    return html`
      <ul>${repeat(
        sheets,
        ({ id }) => id,
        (sheet) => this.saved(sheet),
      )}</ul>
    `
  }

  private choice(): TemplateResult {
    return html`
      <div class="order">
        <label for="order">${words.sortBy}</label>
        <select
          id="order"
          class="field"
          @change=${(event: Event) => {
            this.order = (event.target as HTMLSelectElement).value as Order
          }}
        >${ORDERS.map((order) => html`<option value=${order} ?selected=${order === this.order}>${words.orders[order]}</option>`)}</select>
      </div>
    `
  }

  override render(): TemplateResult | typeof nothing {
    const searching = this.query.trim() !== ''
    const all = searching ? this.sheets.filter((sheet) => isNamedSo(sheet, this.query)) : this.sheets
    const sheets = sortedSheets(
      all.filter(({ archived }) => archived === undefined),
      this.order,
    )
    const archived = sortedSheets(
      all.filter((one) => one.archived !== undefined),
      this.order,
    )
    if (sheets.length + archived.length === 0 && !this.problem) return nothing
    // Sorted by anything but time, what comes first is no more likely than the rest.
    const shown = this.order === 'saved' ? SHOWN : sheets.length
    const older = sheets.slice(shown)
    return html`
      <section aria-label=${words.yourSheets}>
        <h2>${words.yourSheets}</h2>
        ${this.problem ? html`<p role="alert">${this.problem}</p>` : nothing}
        ${this.sheets.length > SHOWN ? this.choice() : nothing} ${this.list(sheets.slice(0, shown))}
        ${
          older.length > 0
            ? html`<details ?open=${searching}>
                <summary>${words.older(older.length)}</summary>
                ${this.list(older)}
              </details>`
            : nothing
        }
        ${
          archived.length > 0
            ? html`<details ?open=${searching}>
                <summary class="archived">${words.archived(archived.length)}</summary>
                ${this.list(archived)}
              </details>`
            : nothing
        }
      </section>
    `
  }
}
