import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, query } from 'lit/decorators.js'
import type { Outcome, Result } from '../../worksheet/index.ts'
import { requestChange } from '../shared/cell-view.ts'
import { errorMessageStyle } from '../shared/error-message.ts'
import { field, shared } from '../style/styles.ts'
import { initialsField, initialsStyle, measuredField, measuring } from './measured-field.ts'
import { detailsWords } from './words.ts'

/** The row under a result that it is measured in. */
@customElement('measure-row')
export class MeasureRow extends LitElement {
  static override styles = [
    shared,
    field,
    errorMessageStyle,
    initialsStyle,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 122px 38px;
        column-gap: 8px;
        align-items: center;
        padding-block-end: 0.5rem;
      }
      #measured {
        font-size: 1.1333rem;
        font-variant-numeric: tabular-nums;
        text-align: end;
      }
      .below {
        grid-column: 1 / -1;
        padding-block: 0.5rem 0;
      }
    `,
  ]

  @property({ attribute: false }) cell!: Result
  @property({ attribute: false }) outcome!: Outcome
  @query('#measured') private field!: HTMLInputElement | null

  override focus(): void {
    void this.updateComplete.then(() => this.field?.focus())
  }

  override render(): TemplateResult {
    const { cell, outcome } = this
    return html`
      <label for="measured" class="small">${cell.measure ?? detailsWords.measuredValue}</label>
      ${measuredField(cell, outcome, (text) => requestChange(this, ...measuring(cell, text)))} ${initialsField()}
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-row': MeasureRow
  }
}
