import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { labelled, labelledStyle, selected } from '../../cells/fields/labelled.ts'
import { field, shared } from '../../cells/style/styles.ts'
import { aSort, FIGURE_LABELS, SORT_LABELS } from '../../kit/labels.ts'
import { KitError, type Piece, readKitFile, writeKitFile } from '../../kit/piece.ts'
import { Studio } from '../../kit/studio.ts'
import { saveText } from '../../storage/exchange/file.ts'
import { newId } from '../../storage/store/store.ts'
import type { Store } from '../../storage/store/types.ts'
import { readFigure } from '../../worksheet/document/kit-given.ts'
import { KIT_FIGURES, KIT_SORTS, type KitFigure, type KitSort } from '../../worksheet/format/kit-sorts.ts'
import { pageStyle } from '../common/page-style.ts'
import { kitWords as words } from './words.ts'

/** The known figures of a piece of kit in one line. */
const inShort = ({ sort, figures }: Piece): string =>
  KIT_FIGURES[sort]
    .flatMap((figure) => {
      const text = figures[figure.name]
      if (!text?.trim()) return []
      const { short } = FIGURE_LABELS[figure.name] ?? {}
      // A fraction says more than its decimals: 1/3 stop.
      const shown = /\d\/\d/.test(text) ? text : (readFigure(figure, text).readAs ?? text)
      return [`${short ? `${short} ` : ''}${shown}`]
    })
    .join(', ')

/** The studio's equipment, which the kit givens of a sheet choose from. */
@customElement('kit-page')
export class KitPage extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
    pageStyle,
    css`
      main {
        max-inline-size: 46rem;
      }
      @media (min-width: 47rem) {
        main {
          border-inline: 1px solid var(--edge);
        }
      }
      li {
        padding-block: 0.3rem;
        border-block-end: 1px solid var(--rule);
      }
      .line {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-items: center;
        column-gap: 1.2rem;
      }
      .line > span {
        overflow-wrap: anywhere;
      }
      .line .small {
        display: block;
      }
      .form {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 13rem), 1fr));
        gap: 0.7rem 0.9rem;
        align-items: end;
        padding-block: 0.4rem 0.9rem;
      }
      .form .all {
        grid-column: 1 / -1;
      }
      .acts {
        margin-block-start: 1.4rem;
      }
      p {
        margin-block: 0.6rem;
      }
      @container page (max-width: 32rem) {
        .line {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ]

  @property({ attribute: false }) store!: Store
  @state() private pieces: readonly Piece[] | undefined
  @state() private loaded = false
  /** The piece being edited. */
  @state() private opened: string | undefined
  @state() private removed: { readonly piece: Piece; readonly at: number } | undefined
  @state() private said = ''
  /** Changes are queued, so that none overtakes the one before it. */
  private work: Promise<void> = Promise.resolve()

  private get studio(): Studio {
    return new Studio(this.store)
  }

  override connectedCallback(): void {
    super.connectedCallback()
    void this.load()
  }

  private async load(): Promise<void> {
    try {
      this.pieces = await this.studio.pieces()
    } catch (error) {
      this.said = (error as Error).message
    }
    this.loaded = true
  }

  private change(how: (studio: Studio) => Promise<readonly Piece[]>, said = ''): Promise<void> {
    this.work = this.work.then(async () => {
      try {
        this.pieces = await how(this.studio)
        this.said = said
      } catch (error) {
        this.said = words.notSaved((error as Error).message)
      }
    })
    return this.work
  }

  /** Shows an edit at once and saves it in the background. */
  private put(piece: Piece): void {
    this.pieces = (this.pieces ?? []).map((one) => (one.id === piece.id ? piece : one))
    void this.change((studio) => studio.put(piece))
  }

  private async add(sort: KitSort): Promise<void> {
    const piece: Piece = { id: newId(), sort, name: '', figures: {} }
    await this.change((studio) => studio.put(piece))
    await this.open(piece.id)
  }

  private async open(id: string): Promise<void> {
    this.opened = id
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('.form input')?.focus()
  }

  private async close(id: string): Promise<void> {
    this.opened = undefined
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>(`[data-edit="${id}"]`)?.focus()
  }

  private async duplicate(piece: Piece): Promise<void> {
    const copy = { ...piece, id: newId(), name: words.copyOf(piece.name) }
    await this.change((studio) => studio.duplicate(piece, copy))
    await this.open(copy.id)
  }

  private async removePiece(piece: Piece): Promise<void> {
    const at = (this.pieces ?? []).findIndex(({ id }) => id === piece.id)
    await this.change((studio) => studio.remove(piece.id))
    this.removed = { piece, at }
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('[data-back]')?.focus()
  }

  private async restorePiece(): Promise<void> {
    const { removed } = this
    if (!removed) return
    this.removed = undefined
    await this.change((studio) => studio.putBack(removed.piece, removed.at))
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>(`[data-edit="${removed.piece.id}"]`)?.focus()
  }

  private async addGeneric(): Promise<void> {
    const { genericKit } = await import('../../kit/generic.ts')
    const pieces = await genericKit()
    await this.change((studio) => studio.take(pieces), words.genericAdded)
  }

  private async addFile(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement
    const file = input.files?.[0]
    input.value = ''
    if (!file) return
    try {
      const pieces = readKitFile(await file.text())
      await this.change((studio) => studio.take(pieces), words.added(pieces.length, file.name))
    } catch (error) {
      if (!(error instanceof KitError)) throw error
      this.said = words.inFile(file.name, error.message)
    }
  }

  private async saveKit(): Promise<void> {
    try {
      await saveText('kit.json', writeKitFile(this.pieces ?? []), 'application/json')
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  private figure(piece: Piece, figure: KitFigure): TemplateResult {
    const { label, hint } = FIGURE_LABELS[figure.name] ?? { label: figure.name }
    const text = piece.figures[figure.name] ?? ''
    const put = (value: string): void => {
      const { [figure.name]: _, ...others } = piece.figures
      this.put({ ...piece, figures: value === '' ? others : { ...others, [figure.name]: value } })
    }
    if (figure.entry === 'choice')
      return selected({
        label,
        value: text,
        options: [['', words.unknown], ...(figure.options ?? []).map((one): [string, string] => [one, one])],
        put,
      })
    return labelled({
      label: figure.unit ? `${label}, ${figure.unit}` : label,
      value: text,
      put,
      wrong: text.trim() === '' ? undefined : readFigure(figure, text).error?.message,
      ...(hint ? { hint } : {}),
    })
  }

  private form(piece: Piece): TemplateResult {
    return html`
      <li>
        <div class="form">
          ${labelled({ label: words.name, value: piece.name, put: (name) => this.put({ ...piece, name }), className: 'all' })}
          ${KIT_FIGURES[piece.sort].map((figure) => this.figure(piece, figure))}
          ${labelled({ label: words.note, value: piece.note ?? '', put: (note) => this.put({ ...piece, note }), className: 'all' })}
          <div class="all words">
            <button type="button" class="word" @click=${() => void this.close(piece.id)}>${words.done}</button>
          </div>
        </div>
      </li>
    `
  }

  private piece(piece: Piece): TemplateResult {
    if (this.opened === piece.id) return this.form(piece)
    const name = piece.name.trim() || SORT_LABELS[piece.sort][0]
    return html`
      <li class="line">
        <span>${name}<span class="small quiet">${inShort(piece)}</span></span>
        <div class="words">
          <button type="button" class="word" data-edit=${piece.id} aria-label=${words.act(words.edit, name)} @click=${() => void this.open(piece.id)}>${words.edit}</button>
          <button type="button" class="word" aria-label=${words.act(words.duplicate, name)} @click=${() => void this.duplicate(piece)}>${words.duplicate}</button>
          <button type="button" class="word" aria-label=${words.act(words.remove, name)} @click=${() => void this.removePiece(piece)}>${words.remove}</button>
        </div>
      </li>
    `
  }

  private sort(sort: KitSort): TemplateResult {
    const own = (this.pieces ?? []).filter((piece) => piece.sort === sort)
    const [, several] = SORT_LABELS[sort]
    return html`
      <section aria-labelledby="sort-${sort.replace(' ', '-')}">
        <h2 id="sort-${sort.replace(' ', '-')}">${several}</h2>
        <ul>
          ${repeat(
            own,
            ({ id }) => id,
            (piece) => this.piece(piece),
          )}
        </ul>
        <button type="button" class="word" @click=${() => void this.add(sort)}>${words.add(aSort(sort))}</button>
      </section>
    `
  }

  override render(): TemplateResult | typeof nothing {
    if (!this.loaded) return nothing
    const none = (this.pieces ?? []).length === 0
    return html`
      <main>
        <h1>${words.yourKit}</h1>
        <p>${words.about}</p>
        ${
          none
            ? html`<p>${words.empty}</p>
                <button type="button" class="press primary" @click=${() => void this.addGeneric()}>${words.addGeneric}</button>`
            : nothing
        }
        ${
          this.removed
            ? html`<p>
                ${words.removed(this.removed.piece.name)}
                <button type="button" class="word" data-back @click=${() => void this.restorePiece()}>${words.undo}</button>
              </p>`
            : nothing
        }
        <p role="status" class="small">${this.said}</p>
        ${KIT_SORTS.map((sort) => this.sort(sort))}
        <div class="presses acts">
          <button type="button" class="press" ?disabled=${none} @click=${() => void this.saveKit()}>${words.saveFile}</button>
          <button type="button" class="press" @click=${() => this.renderRoot.querySelector<HTMLInputElement>('#kit-file')?.click()}>
            ${words.openFile}
          </button>
          <input id="kit-file" type="file" accept=".json,application/json" hidden @change=${(event: Event) => void this.addFile(event)}>
        </div>
      </main>
    `
  }
}
