import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Draw } from '../../drawings/canvas/drawing-options.ts'
import type { Drawing, Table } from '../../drawings/canvas/tree.ts'
import { LOADERS } from '../../drawings/loaders.ts'
import type { DrawingKind } from '../../worksheet/index.ts'
import type { SavedAs } from '../picture/save-drawing.ts'
import { saveOrExplain, ZOOM } from '../picture/shown-drawing.ts'
import type { CellSignal, DrawingView } from '../shared/cell-view.ts'
import { dragging } from '../shared/dragging.ts'
import { drawnStyle, drawTree } from '../shared/draw-tree.ts'
import { inView } from '../shared/in-view.ts'
import { OwnWidth } from '../shared/own-width.ts'
import { fold, shared } from '../style/styles.ts'
import { basicWords } from './words.ts'

const rowsOf = ({ head, rows }: Table): TemplateResult => html`
  <table class="quiet">
    <thead><tr>${head.map((one) => html`<th scope="col">${one}</th>`)}</tr></thead>
    <tbody>${rows.map((row) => html`<tr>${row.map((one) => html`<td>${one}</td>`)}</tr>`)}</tbody>
  </table>
`

/** A drawing taller than this is drawn narrower, though not below the width of a phone, so that its text has room. */
const TALLEST = 380
const NARROWEST = 310

/** A drawing of the sheet's figures, to scale, with the same content in words below. */
@customElement('drawing-cell')
export class DrawingCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    drawnStyle,
    fold,
    css`
      /* About the size of a drawing, so that the next one does not count as in view. */
      .place {
        aspect-ratio: 4 / 5;
      }
      .stage {
        position: relative;
        max-inline-size: 100%;
        margin-inline: auto;
      }
      .title {
        display: flex;
        align-items: end;
        justify-content: space-between;
        gap: 1rem;
        margin-block-end: 8px;
        border-block-end: 1px solid var(--hair);
      }
      .title > span {
        padding-block-end: 5px;
      }
      .under {
        display: flex;
        flex-wrap: wrap;
        align-items: start;
        column-gap: 1.2rem;
      }
      details[open] {
        order: 1;
        flex-basis: 100%;
      }
      figcaption {
        margin-block-start: 0.6rem;
      }
      table {
        border-collapse: collapse;
        font-variant-numeric: tabular-nums;
      }
      th {
        font-weight: inherit;
        vertical-align: bottom;
      }
      th,
      td {
        padding: 0.15rem 0 0.15rem 1rem;
        text-align: end;
        border-block-end: 1px solid var(--rule);
      }
      :is(th, td):first-child {
        padding-inline-start: 0;
        text-align: start;
      }
      @media print {
        .title .word,
        .under .word,
        .how {
          display: none;
        }
      }
      ul {
        margin: 0.3rem 0 0;
        padding-inline-start: 1.1rem;
      }
    `,
  ]

  @property({ attribute: false }) view!: CellSignal<DrawingView>
  private readonly width = new OwnWidth(this)
  @state() private ready: { readonly kind: DrawingKind; readonly draw: Draw } | undefined
  /** Opening a sheet does not load drawings further down. */
  private seen = inView(this)
  /** The kind and inputs of the drawing that was last loaded. */
  private fetched = ''
  /** The drawing in which a lamp drag began; its layout is reused until the lamp is released. */
  @state() private layoutSource: Drawing | undefined
  /** The width it is drawn for, and the width of the cell for which that was chosen. */
  private px = 0
  private fittedFor = 0
  @state() private problem = ''
  @state() private enlarged = false
  private async fetch(key: string, { drawing: kind, from }: DrawingView['cell']): Promise<void> {
    this.fetched = key
    await this.seen
    const draw = await LOADERS[kind](from)
    if (this.fetched === key) this.ready = { kind, draw }
  }

  override render(): TemplateResult {
    const { cell, outcome } = this.view.get()
    const missing = Object.values(outcome.missing)
    const key = [cell.drawing, ...Object.keys(cell.from)].join()
    if (this.fetched !== key) void this.fetch(key, cell)
    if (this.ready?.kind !== cell.drawing || this.width.px === 0)
      return html`<figure><div class="place"></div></figure>`
    const { draw } = this.ready
    const options = { unit: cell.unit, title: cell.title || undefined, quick: dragging.get() }
    const laidOut = (px: number): Drawing =>
      draw(outcome.values, { ...options, width: px / ZOOM, zoom: ZOOM, layoutFrom: this.layoutSource })
    if (this.fittedFor !== this.width.px) this.fit(laidOut)
    const drawn = laidOut(this.px)
    const cannot = [...new Set([...drawn.omissions, ...missing])]
    const movable = (cell.moves?.length ?? 0) > 0 && (drawn.handles?.length ?? 0) > 0
    if (movable) void import('../lamps/lamp-handles.ts')
    return html`
      <figure>
        <div class="title small">
          <span class="quiet">${drawn.title}</span>
          <button type="button" class="word" @click=${() => void this.enlarge()}>${basicWords.enlarge}</button>
        </div>
        <div class="stage" .style=${`inline-size: ${this.px}px`}>
          ${drawTree(drawn.node)}
          ${movable ? html`<lamp-handles .drawn=${drawn} .view=${this.view} @lamp-held=${this.holdLayout}></lamp-handles>` : nothing}
        </div>
        <figcaption class="small">
          ${movable ? html`<p class="quiet how">${basicWords.dragLamps}</p>` : nothing}
          <div class="under">
            <details>
              <summary>${basicWords.inWords}</summary>
              <p class="quiet">${drawn.description}</p>
              ${drawn.table ? rowsOf(drawn.table) : nothing}
            ${cannot.length > 0 ? html`<ul class="quiet">${cannot.map((why) => html`<li>${why}</li>`)}</ul>` : nothing}
            </details>
            <button type="button" class="word" @click=${() => this.save(drawn, 'svg')}>${basicWords.saveSvg}</button>
            <button type="button" class="word" @click=${() => this.save(drawn, 'png')}>${basicWords.savePng}</button>
          </div>
          ${this.problem ? html`<p role="alert">${this.problem}</p>` : nothing}
        </figcaption>
      </figure>
      ${
        this.enlarged
          ? html`<enlarged-drawing
              .draw=${(width: number, zoom: number) => draw(outcome.values, { ...options, width, zoom })}
              @enlarged-closed=${() => {
                this.enlarged = false
              }}
            ></enlarged-drawing>`
          : nothing
      }
    `
  }

  /** The largest width at which the drawing is not too tall: chosen once, since it would jump while one types. */
  private fit(laidOut: (px: number) => Drawing): void {
    const { px } = this.width
    this.fittedFor = px
    const widths = [px, 0.9 * px, 0.8 * px].map(Math.round).filter((one) => one === px || one >= NARROWEST)
    this.px = widths.find((one) => laidOut(one).height <= TALLEST) ?? (widths.at(-1) as number)
  }

  private async enlarge(): Promise<void> {
    await import('../picture/enlarged-drawing.ts')
    this.enlarged = true
  }

  private readonly holdLayout = (event: CustomEvent<Drawing | undefined>): void => {
    this.layoutSource = event.detail
  }

  private async save(drawn: Drawing, as: SavedAs): Promise<void> {
    this.problem = ''
    const why = await saveOrExplain(drawn, this.view.get().sheet.worksheet.title, as)
    if (why) this.problem = basicWords.notSaved(why)
  }
}
