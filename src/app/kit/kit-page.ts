import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { labelled, labelledStyle, selected } from '../../cells/shared/labelled.ts'
import { field, shared } from '../../cells/style/styles.ts'
import { FIGURE_LABELS, SORT_LABELS } from '../../kit/labels.ts'
import { KitError, type Piece, readKitFile, writeKitFile } from '../../kit/piece.ts'
import { Studio } from '../../kit/studio.ts'
import { newId } from '../../storage/store/store.ts'
import type { Store } from '../../storage/store/types.ts'
import { readFigure } from '../../worksheet/document/kit-given.ts'
import { KIT_FIGURES, KIT_SORTS, type KitFigure, type KitSort } from '../../worksheet/schema/kit-sorts.ts'
import { pageStyle } from '../common/page-style.ts'

/** The figures of a piece in a line, as far as they are known. */
const inShort = ({ sort, figures }: Piece): string =>
  KIT_FIGURES[sort]
    .flatMap((figure) => {
      const text = figures[figure.name]
      if (!text?.trim()) return []
      const { short } = FIGURE_LABELS[figure.name] ?? {}
      return [`${short ? `${short} ` : ''}${readFigure(figure, text).readAs ?? text}`]
    })
    .join(', ')

/** The studio's equipment: what givens of a sheet can be filled in from. */
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
  /** The piece that stands open. */
  @state() private opened: string | undefined
  @state() private removed: { readonly piece: Piece; readonly at: number } | undefined
  @state() private said = ''
  /** One change after another, so that none overtakes the one before. */
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
        this.said = `This was not kept: ${(error as Error).message}`
      }
    })
    return this.work
  }

  /** What is typed shows at once; it is kept behind it. */
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
    const copy = { ...piece, id: newId(), name: `${piece.name}, copy` }
    await this.change((studio) => studio.duplicate(piece, copy))
    await this.open(copy.id)
  }

  private async takeOut(piece: Piece): Promise<void> {
    const at = (this.pieces ?? []).findIndex(({ id }) => id === piece.id)
    await this.change((studio) => studio.remove(piece.id))
    this.removed = { piece, at }
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('[data-back]')?.focus()
  }

  private async putBack(): Promise<void> {
    const { removed } = this
    if (!removed) return
    this.removed = undefined
    await this.change((studio) => studio.putBack(removed.piece, removed.at))
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>(`[data-edit="${removed.piece.id}"]`)?.focus()
  }

  private async takeGeneric(): Promise<void> {
    const { genericKit } = await import('../../kit/generic.ts')
    const pieces = await genericKit()
    await this.change((studio) => studio.take(pieces), 'The generic kit is in. Put your own figures in its place.')
  }

  private async take(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement
    const file = input.files?.[0]
    input.value = ''
    if (!file) return
    try {
      const pieces = readKitFile(await file.text())
      await this.change(
        (studio) => studio.take(pieces),
        `${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'} taken in from ${file.name}.`,
      )
    } catch (error) {
      if (!(error instanceof KitError)) throw error
      this.said = `${file.name}: ${error.message}`
    }
  }

  private give(): void {
    const address = URL.createObjectURL(new Blob([writeKitFile(this.pieces ?? [])], { type: 'application/json' }))
    const link = document.createElement('a')
    link.href = address
    link.download = 'kit.json'
    link.click()
    // The download reads the address after this turn.
    setTimeout(() => URL.revokeObjectURL(address), 60_000)
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
        options: [['', 'not known'], ...(figure.options ?? []).map((one): [string, string] => [one, one])],
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
          ${labelled({ label: 'What it is called', value: piece.name, put: (name) => this.put({ ...piece, name }), className: 'all' })}
          ${KIT_FIGURES[piece.sort].map((figure) => this.figure(piece, figure))}
          ${labelled({ label: 'A word about it', value: piece.note ?? '', put: (note) => this.put({ ...piece, note }), className: 'all' })}
          <div class="all words">
            <button type="button" class="word" @click=${() => void this.close(piece.id)}>Done</button>
          </div>
        </div>
      </li>
    `
  }

  private piece(piece: Piece): TemplateResult {
    if (this.opened === piece.id) return this.form(piece)
    const called = piece.name.trim() || SORT_LABELS[piece.sort][0]
    return html`
      <li class="line">
        <span>${called}<span class="small quiet">${inShort(piece)}</span></span>
        <div class="words">
          <button type="button" class="word" data-edit=${piece.id} aria-label="Edit ${called}" @click=${() => void this.open(piece.id)}>Edit</button>
          <button type="button" class="word" aria-label="Duplicate ${called}" @click=${() => void this.duplicate(piece)}>Duplicate</button>
          <button type="button" class="word" aria-label="Remove ${called}" @click=${() => void this.takeOut(piece)}>Remove</button>
        </div>
      </li>
    `
  }

  private sort(sort: KitSort): TemplateResult {
    const own = (this.pieces ?? []).filter((piece) => piece.sort === sort)
    const [one, several] = SORT_LABELS[sort]
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
        <button type="button" class="word" @click=${() => void this.add(sort)}>Add ${/^[aeiou]/i.test(one) ? 'an' : 'a'} ${one.toLowerCase()}</button>
      </section>
    `
  }

  override render(): TemplateResult | typeof nothing {
    if (!this.loaded) return nothing
    const none = (this.pieces ?? []).length === 0
    return html`
      <main>
        <h1>Your kit</h1>
        <p>
          The studio’s own equipment. A sheet that asks for a piece offers what is here, and keeps a copy of its figures, so that
          it works on any machine.
        </p>
        ${
          none
            ? html`<p>There is nothing in it yet. Add what you have, or begin with a generic kit and put your own figures in its place.</p>
                <button type="button" class="press" @click=${() => void this.takeGeneric()}>Put in the generic kit</button>`
            : nothing
        }
        ${
          this.removed
            ? html`<p>
                «${this.removed.piece.name}» is removed.
                <button type="button" class="word" data-back @click=${() => void this.putBack()}>Undo</button>
              </p>`
            : nothing
        }
        <p role="status" class="small">${this.said}</p>
        ${KIT_SORTS.map((sort) => this.sort(sort))}
        <div class="presses acts">
          <button type="button" class="press" ?disabled=${none} @click=${() => this.give()}>Save the kit as a file</button>
          <button type="button" class="press" @click=${() => this.renderRoot.querySelector<HTMLInputElement>('#kit-file')?.click()}>
            Take in a kit from a file
          </button>
          <input id="kit-file" type="file" accept=".json,application/json" hidden @change=${(event: Event) => void this.take(event)}>
        </div>
      </main>
    `
  }
}
