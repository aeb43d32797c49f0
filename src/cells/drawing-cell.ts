import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Draw } from '../drawings/drawing-options.ts'
import { DRAWINGS } from '../drawings/registry.ts'
import type { DrawingKind } from '../worksheet/index.ts'
import type { CellSignal, DrawingView } from './cell-view.ts'
import { drawTree } from './draw-tree.ts'
import { shared } from './styles.ts'

/** The lettering is drawn for close reading; the stand is read at arm's length. */
const ENLARGED = 1.15

/** A drawing from the sheet's own figures, to scale, with the same in words below. */
@customElement('drawing-cell')
export class DrawingCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
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
      .place {
        min-block-size: 3rem;
      }
      figcaption {
        margin-block-start: 0.6rem;
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
      ul {
        margin: 0.3rem 0 0;
        padding-inline-start: 1.1rem;
      }
    `,
  ]

  @property({ attribute: false }) view!: CellSignal<DrawingView>
  @state() private width = 0
  @state() private ready: { readonly kind: DrawingKind; readonly draw: Draw } | undefined
  private readonly watcher = new ResizeObserver(([entry]) => {
    this.width = Math.round(entry?.contentRect.width ?? 0)
  })

  override connectedCallback(): void {
    super.connectedCallback()
    this.watcher.observe(this)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.watcher.disconnect()
  }

  private async fetch(kind: DrawingKind): Promise<void> {
    const draw = await DRAWINGS[kind].load()
    if (this.view.get().cell.drawing === kind) this.ready = { kind, draw }
  }

  override render(): TemplateResult {
    const { cell, outcome } = this.view.get()
    const missing = Object.values(outcome.missing)
    if (this.ready?.kind !== cell.drawing) void this.fetch(cell.drawing)
    if (this.ready?.kind !== cell.drawing || this.width === 0) return html`<figure><div class="place"></div></figure>`
    const drawn = this.ready.draw(outcome.values, {
      width: this.width / ENLARGED,
      enlarged: ENLARGED,
      unit: cell.unit,
      title: cell.title || undefined,
    })
    const cannot = [...new Set([...drawn.cannot, ...missing])]
    return html`
      <figure>
        ${drawTree(drawn.node)}
        <figcaption class="small">
          ${drawn.title}
          <details>
            <summary>In words</summary>
            <p class="quiet">${drawn.description}</p>
            ${cannot.length > 0 ? html`<ul class="quiet">${cannot.map((why) => html`<li>${why}</li>`)}</ul>` : nothing}
          </details>
        </figcaption>
      </figure>
    `
  }
}
