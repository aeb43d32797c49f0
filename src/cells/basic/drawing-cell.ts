import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Draw } from '../../drawings/canvas/drawing-options.ts'
import type { Drawing, Table } from '../../drawings/canvas/tree.ts'
import { LOADERS } from '../../drawings/loaders.ts'
import type { DrawingKind } from '../../worksheet/index.ts'
import type { SavedAs } from '../picture/save-drawing.ts'
import { ENLARGED, OwnWidth, saveOrSay } from '../picture/shown-drawing.ts'
import type { CellSignal, DrawingView } from '../shared/cell-view.ts'
import { dragging } from '../shared/dragging.ts'
import { drawTree } from '../shared/draw-tree.ts'
import { inView } from '../shared/in-view.ts'
import { fold, shared } from '../style/styles.ts'

const rowsOf = ({ head, rows }: Table): TemplateResult => html`
  <table class="quiet">
    <thead><tr>${head.map((one) => html`<th scope="col">${one}</th>`)}</tr></thead>
    <tbody>${rows.map((row) => html`<tr>${row.map((one) => html`<td>${one}</td>`)}</tr>`)}</tbody>
  </table>
`

/** A drawing from the sheet's own figures, to scale, with the same in words below. */
@customElement('drawing-cell')
export class DrawingCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    fold,
    css`
      .drawing {
        display: block;
        inline-size: 100%;
        block-size: auto;
        overflow: visible;
        font-family: var(--type);
        color: var(--ink);
      }
      .figure-text {
        font-variant-numeric: tabular-nums;
      }
      /* About what a drawing takes, so that the next one is not taken to be in view. */
      .place {
        aspect-ratio: 4 / 5;
      }
      .stage {
        position: relative;
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
  /** A drawing further down is not waited for when a sheet is opened. */
  private seen = inView(this)
  /** What the drawing is of and what feeds it, as it was when it was last sent for. */
  private fetched = ''
  /** The drawing a lamp was taken hold of in: it holds still till the lamp is let go. */
  @state() private held: Drawing | undefined
  @state() private trouble = ''
  private async fetch(wanted: string, { drawing: kind, from }: DrawingView['cell']): Promise<void> {
    this.fetched = wanted
    await this.seen
    const draw = await LOADERS[kind](from)
    if (this.fetched === wanted) this.ready = { kind, draw }
  }

  override render(): TemplateResult {
    const { cell, outcome } = this.view.get()
    const missing = Object.values(outcome.missing)
    const wanted = [cell.drawing, ...Object.keys(cell.from)].join()
    if (this.fetched !== wanted) void this.fetch(wanted, cell)
    if (this.ready?.kind !== cell.drawing || this.width.px === 0)
      return html`<figure><div class="place"></div></figure>`
    const drawn = this.ready.draw(outcome.values, {
      width: this.width.px / ENLARGED,
      zoom: ENLARGED,
      unit: cell.unit,
      title: cell.title || undefined,
      quick: dragging.get(),
      layoutFrom: this.held,
    })
    const cannot = [...new Set([...drawn.omissions, ...missing])]
    const movable = (cell.moves?.length ?? 0) > 0 && (drawn.handles?.length ?? 0) > 0
    if (movable) void import('../lamps/lamp-handles.ts')
    return html`
      <figure>
        <div class="stage">
          ${drawTree(drawn.node)}
          ${movable ? html`<lamp-handles .drawn=${drawn} .view=${this.view} @lamp-held=${this.hold}></lamp-handles>` : nothing}
        </div>
        <figcaption class="small">
          ${drawn.title}
          ${movable ? html`<p class="quiet how">A lamp can be dragged, or moved by the arrow keys.</p>` : nothing}
          <div class="under">
            <details>
              <summary>In words</summary>
              <p class="quiet">${drawn.description}</p>
              ${drawn.table ? rowsOf(drawn.table) : nothing}
            ${cannot.length > 0 ? html`<ul class="quiet">${cannot.map((why) => html`<li>${why}</li>`)}</ul>` : nothing}
            </details>
            <button type="button" class="word" @click=${() => this.save(drawn, 'svg')}>Save as SVG</button>
            <button type="button" class="word" @click=${() => this.save(drawn, 'png')}>Save as PNG</button>
          </div>
          ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}
        </figcaption>
      </figure>
    `
  }

  private readonly hold = (event: CustomEvent<Drawing | undefined>): void => {
    this.held = event.detail
  }

  private async save(drawn: Drawing, as: SavedAs): Promise<void> {
    this.trouble = ''
    const why = await saveOrSay(drawn, this.view.get().sheet.worksheet.title, as)
    if (why) this.trouble = `The drawing was not saved: ${why}`
  }
}
