import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Range } from '../worksheet/index.ts'
import { type CellSignal, labelOf, type WideView } from './cell-view.ts'
import { shared } from './styles.ts'

@customElement('range-cell')
export class RangeCell extends SignalWatcher(LitElement) {
  static override styles = [shared]

  @property({ attribute: false }) view!: CellSignal<WideView<Range>>

  override render(): TemplateResult {
    return html`<p>${labelOf(this.view.get().cell)}</p>`
  }
}
