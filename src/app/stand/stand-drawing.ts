import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { CellSignal, DrawingView } from '../../cells/shared/cell-view.ts'
import { drawnStyle, drawTree } from '../../cells/shared/draw-tree.ts'
import { OwnWidth } from '../../cells/shared/own-width.ts'
import { shared } from '../../cells/style/styles.ts'
import type { Draw } from '../../drawings/canvas/drawing-options.ts'
import { LOADERS } from '../../drawings/loaders.ts'

/** The drawing of a step at the stand: the dimension that the step is about is thick. */
@customElement('stand-drawing')
export class StandDrawing extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    drawnStyle,
    css`
      /* The dimension or the frame of the step. */
      .is-emphasis:is(path, line) {
        stroke-width: 3px;
      }
      text.is-emphasis {
        font-weight: 700;
      }
      /* Where the drawing does not know of it: further from its thick line. */
      text.is-emphasis:not([font-weight]) {
        translate: 0 -1.2px;
      }
      text.is-emphasis[transform]:not([font-weight]) {
        translate: -1.2px 0;
      }
      .place {
        aspect-ratio: 4 / 5;
      }
    `,
  ]

  @property({ attribute: false }) view!: CellSignal<DrawingView>
  /** The input whose dimension the step is about, where it is known. */
  @property() emphasis = ''
  /** The figure of the step, as text; the dimension that shows it is emphasized where no input is. */
  @property() figure = ''
  /** A class of the drawing to emphasize, such as that of a frame. */
  @property() accent = ''
  private readonly width = new OwnWidth(this)
  @state() private ready: { readonly key: string; readonly draw: Draw } | undefined
  private fetched = ''

  private async fetch(key: string, { drawing, from }: DrawingView['cell']): Promise<void> {
    this.fetched = key
    const draw = await LOADERS[drawing](from)
    if (this.fetched === key) this.ready = { key, draw }
  }

  override render(): TemplateResult {
    const { cell, outcome } = this.view.get()
    const key = [cell.id, cell.drawing, ...Object.keys(cell.from)].join()
    if (this.fetched !== key) void this.fetch(key, cell)
    if (this.ready?.key !== key || this.width.px === 0) return html`<div class="place"></div>`
    const drawn = this.ready.draw(outcome.values, {
      unit: cell.unit,
      title: cell.title || undefined,
      emphasis: this.emphasis || undefined,
      width: this.width.px,
      zoom: 1,
    })
    const tree = drawTree(drawn.node)
    emphasize(tree, this.accent || dimensionShowing(tree, this.figure))
    return html`${tree}`
  }
}

const classesOf = (element: Element): readonly string[] => (element.getAttribute('class') ?? '').split(' ')

/** The class of the dimension whose figure is the text given; empty where none or several show it. */
function dimensionShowing(tree: Element, figure: string): string {
  if (figure === '') return ''
  const bare = (text: string): string => text.replace(/\D+$/, '')
  const found = new Set(
    [...tree.querySelectorAll('text')]
      .filter(({ textContent }) => textContent === figure || bare(textContent ?? '') === bare(figure))
      .flatMap((text) => classesOf(text).filter((name) => name.startsWith('dimension-'))),
  )
  return found.size === 1 ? ([...found][0] as string) : ''
}

function emphasize(tree: Element, name: string): void {
  if (name === '') return
  for (const element of tree.querySelectorAll(`.${CSS.escape(name)}`))
    if (!classesOf(element).includes('extension')) element.classList.add('is-emphasis')
}
