import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { declaredUnit, looksLikeSize } from '../../worksheet/document/read-given.ts'
import type { Given } from '../../worksheet/index.ts'
import { requestChange } from '../shared/cell-view.ts'
import { shared } from '../style/styles.ts'
import { detailsWords } from './words.ts'

/** Where a size was typed for one quantity: a button that makes the given a size. */
@customElement('size-offer')
export class SizeOffer extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        grid-column: 1 / -1;
        display: flex;
        justify-content: flex-end;
      }
      button {
        margin-block-end: 0.5rem;
      }
    `,
  ]

  @property({ attribute: false }) cell!: Given

  override render(): TemplateResult | typeof nothing {
    const { cell } = this
    if ((cell.entry ?? 'quantity') !== 'quantity' || !looksLikeSize(cell.value, declaredUnit(cell.unit).unit))
      return nothing
    return html`<button
      type="button"
      class="press"
      @click=${() => requestChange(this, { do: 'replace', cell: { ...cell, entry: 'size' } })}
    >${detailsWords.makeASize}</button>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'size-offer': SizeOffer
  }
}
