import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, query } from 'lit/decorators.js'
import type { Drawing } from '../../drawings/canvas/tree.ts'
import { drawTree } from '../shared/draw-tree.ts'
import { shared } from '../style/styles.ts'
import { pictureWords } from './words.ts'

/** How many times larger than its view box an enlarged drawing is shown: its text is then 18 px high. */
const ZOOM = 1.4
const WIDEST_PX = 1200
/** The part of the screen that is left for the heading and the margins, in pixels. */
const MARGIN = { across: 96, down: 150 }
/** Fractions of the width to try until a tall drawing fits the height of the screen. */
const SHARES = [1, 0.85, 0.7, 0.6, 0.5]

/** A drawing in a dialog, laid out again for the size of the screen. Fires `enlarged-closed`. */
@customElement('enlarged-drawing')
export class EnlargedDrawing extends LitElement {
  static override styles = [
    shared,
    css`
      dialog {
        inline-size: fit-content;
        min-inline-size: min(20rem, 100vw - 1rem);
        max-inline-size: calc(100vw - 1rem);
        max-block-size: calc(100vh - 1rem);
        padding: 16px 24px 24px;
        border: 2px solid var(--ink);
        border-radius: 4px;
        background: var(--sheet);
        color: var(--ink);
      }
      dialog::backdrop {
        background: rgb(0 0 0 / 55%);
      }
      header {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 1rem;
        padding-block-end: 12px;
      }
      h2 {
        font-size: 1.3333rem;
        line-height: 1.2;
      }
      .drawing {
        display: block;
        block-size: auto;
        overflow: visible;
        font-family: var(--type);
      }
      .figure-text {
        font-variant-numeric: tabular-nums;
      }
      .description {
        max-inline-size: 44rem;
        padding-block-start: 12px;
      }
    `,
  ]

  /** Draws for a width in pixels of the view box, to be shown `zoom` times larger. */
  @property({ attribute: false }) draw!: (width: number, zoom: number) => Drawing
  @query('dialog') private dialog!: HTMLDialogElement
  private readonly relayout = (): void => this.requestUpdate()

  override connectedCallback(): void {
    super.connectedCallback()
    addEventListener('resize', this.relayout)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    removeEventListener('resize', this.relayout)
  }

  override firstUpdated(): void {
    this.dialog.showModal()
  }

  private readonly closed = (): void => {
    this.dispatchEvent(new CustomEvent('enlarged-closed'))
  }

  /** The drawing at the largest width whose height fits the screen. */
  private fitted(): Drawing {
    const widest = Math.min(WIDEST_PX, innerWidth - MARGIN.across)
    const draw = (share: number): Drawing => this.draw((widest * share) / ZOOM, ZOOM)
    const fits = ({ height }: Drawing): boolean => height * ZOOM <= innerHeight - MARGIN.down
    let drawn = draw(1)
    for (const share of SHARES.slice(1)) {
      if (fits(drawn)) break
      drawn = draw(share)
    }
    return drawn
  }

  override render(): TemplateResult {
    const drawn = this.fitted()
    const tree = drawTree(drawn.node)
    tree.style.inlineSize = `min(${drawn.width * ZOOM}px, 100%)`
    return html`
      <dialog aria-labelledby="title" @close=${this.closed}>
        <header>
          <h2 id="title">${drawn.title}</h2>
          <button type="button" class="press" @click=${() => this.dialog.close()}>${pictureWords.close}</button>
        </header>
        ${tree}
        ${drawn.description ? html`<p class="small quiet description">${drawn.description}</p>` : nothing}
      </dialog>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'enlarged-drawing': EnlargedDrawing
  }
}
