import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Draw } from '../../drawings/canvas/drawing-options.ts'
import type { Drawing } from '../../drawings/canvas/tree.ts'
import { LOADERS } from '../../drawings/loaders.ts'
import type { DrawingKind } from '../../worksheet/index.ts'
import type { CellSignal, DrawingView } from '../shared/cell-view.ts'
import { dragging } from '../shared/dragging.ts'
import { drawnStyle, drawTree } from '../shared/draw-tree.ts'
import { inView } from '../shared/in-view.ts'
import { OwnWidth } from '../shared/own-width.ts'
import { shared } from '../style/styles.ts'
import { basicWords } from './words.ts'

/** A drawing taller than this is drawn narrower, though not below the width of a phone, so that its text has room. */
const TALLEST = 380
const NARROWEST = 310

/** A drawing of the sheet's figures, to scale, with the same content in words below. */
@customElement('drawing-cell')
export class DrawingCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    drawnStyle,
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
      figcaption {
        margin-block-start: 0.6rem;
      }
      /* The height it has, before it is fetched. */
      drawing-notes:not(:defined) {
        display: block;
        min-block-size: var(--target);
      }
      @media print {
        .place,
        .how {
          display: none;
        }
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
  @state() private enlarged = false

  private async fetch(key: string, { drawing: kind, from }: DrawingView['cell']): Promise<void> {
    this.fetched = key
    await this.seen
    const draw = await LOADERS[kind](from)
    if (this.fetched === key) this.ready = { kind, draw }
  }

  override render(): TemplateResult {
    const { cell, outcome, sheet } = this.view.get()
    const missing = Object.values(outcome.missing)
    const key = [cell.drawing, ...Object.keys(cell.from)].join()
    if (this.fetched !== key) void this.fetch(key, cell)
    if (this.ready?.kind !== cell.drawing || this.width.px === 0)
      return html`<figure><div class="place"></div></figure>`
    const { draw } = this.ready
    const options = { unit: cell.unit, title: cell.title || undefined, quick: dragging.get() }
    const laidOut = (px: number): Drawing =>
      draw(outcome.values, { ...options, width: px, layoutFrom: this.layoutSource })
    const drawn = this.fittedFor === this.width.px ? laidOut(this.px) : this.fit(laidOut)
    void import('../picture/drawing-notes.ts')
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
          <drawing-notes .drawn=${drawn} .missing=${missing} .sheetTitle=${sheet.worksheet.title} .cells=${sheet.cells}></drawing-notes>
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

  /** The drawing at the largest width at which it is not too tall: chosen once, since it would jump while one types. */
  private fit(laidOut: (px: number) => Drawing): Drawing {
    const { px } = this.width
    this.fittedFor = px
    this.px = px
    let drawn = laidOut(px)
    for (const share of [0.9, 0.8]) {
      const less = Math.round(share * px)
      if (drawn.height <= TALLEST || less < NARROWEST) break
      this.px = less
      drawn = laidOut(less)
    }
    return drawn
  }

  private async enlarge(): Promise<void> {
    await import('../picture/enlarged-drawing.ts')
    this.enlarged = true
  }

  private readonly holdLayout = (event: CustomEvent<Drawing | undefined>): void => {
    this.layoutSource = event.detail
  }
}
