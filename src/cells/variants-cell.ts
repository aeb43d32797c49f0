import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Variants } from '../worksheet/index.ts'
import { type CellSignal, labelOf, type WideView } from './cell-view.ts'
import { shared } from './styles.ts'

@customElement('variants-cell')
export class VariantsCell extends SignalWatcher(LitElement) {
  static override styles = [shared]

  @property({ attribute: false }) view!: CellSignal<WideView<Variants>>

  override render(): TemplateResult {
    return html`<p>${labelOf(this.view.get().cell)}</p>`
  }
}
