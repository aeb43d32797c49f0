import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Schedule } from '../worksheet/index.ts'
import { type CellSignal, labelOf, type WideView } from './cell-view.ts'
import { shared } from './styles.ts'

@customElement('schedule-cell')
export class ScheduleCell extends SignalWatcher(LitElement) {
  static override styles = [shared]

  @property({ attribute: false }) view!: CellSignal<WideView<Schedule>>

  override render(): TemplateResult {
    return html`<p>${labelOf(this.view.get().cell)}</p>`
  }
}
