import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Given, Outcome, Result, Steps } from '../../worksheet/index.ts'
import { entryStyle } from '../basic/entry-field.ts'
import { labelOf, requestChange, type WideView } from '../shared/cell-view.ts'
import '../basic/given-cell.ts'
import { figureOf, missingReason, resultStyle } from '../basic/result-cell.ts'
import { measuredField, measuring } from '../details/measured-field.ts'
import { outdatedNote } from '../details/outdated-note.ts'
import { errorMessageStyle } from '../shared/error-message.ts'
import { field, isLong, row, shared, unseen } from '../style/styles.ts'
import { stepsWords } from './words.ts'

/** The reading of a step, typed in place: the field of a given, or the measured value of a result. */
@customElement('steps-reading')
export class StepsReading extends LitElement {
  static override styles = [
    shared,
    row,
    field,
    entryStyle,
    resultStyle,
    errorMessageStyle,
    css`
      :host {
        container-type: inline-size;
      }
      given-cell {
        border-block-end: 0;
      }
      .row {
        border-block-end: 0;
      }
      p {
        padding-block-end: 0.6rem;
      }
      /* On a phone the label is above the field: beside it there is no room for what was computed. */
      @container (min-width: 13.01rem) and (max-width: 25rem) {
        .row > .what {
          grid-column: 1 / -1;
          padding-block-start: 6px;
        }
        .row > .what + * {
          grid-column: 2;
        }
      }
      /* Beside its step, which says what is read: the field alone, with what was computed in it until something is measured. */
      @container (max-width: 13rem) {
        .row {
          grid-template: minmax(var(--row), auto) auto / minmax(0, 1fr) minmax(34px, auto);
        }
        .what {
          grid-column: 1 / -1;
          grid-row: 2;
        }
        .what label,
        .planned {
          ${unseen}
        }
      }
    `,
  ]

  @property() name = ''
  /** The present steps; a new object whenever a reading has changed. */
  @property({ attribute: false }) view!: WideView<Steps>

  private given(cell: Given): TemplateResult {
    const { sheet, called } = this.view
    const view = { cell, outcome: sheet.outcome(cell.id), called, sheet }
    return html`<given-cell .view=${{ get: () => view }}></given-cell>`
  }

  private measured(cell: Result, outcome: Outcome): TemplateResult {
    const label = labelOf(cell)
    const measured = outcome.state === 'value' ? outcome.measured : undefined
    const computed = measured ? measured.computed?.shown : outcome.state === 'value' ? outcome.shown : undefined
    const why = missingReason(outcome, this.view.called)
    return html`
      <div class="row ${isLong(label) ? 'long' : ''}">
        <div class="what">
          <label for="measured">${stepsWords.measured(label)}</label>
          ${computed ? html`<span class="small ${measured ? '' : 'planned'}">${stepsWords.computed(computed.text, measured?.difference ?? '', measured?.adjust)}</span>` : nothing}
          ${outdatedNote(cell, outcome, this.view.called)}
          ${measured?.contradicts?.map((text) => html`<span class="small">${text}</span>`) ?? nothing}
          ${why ? html`<span class="small">${why}</span>` : nothing}
        </div>
        ${measuredField(cell, outcome, (text) => requestChange(this, ...measuring(cell, text)), computed?.figure)}
      </div>
    `
  }

  override render(): TemplateResult {
    const { name, view } = this
    const cell = view.sheet.named(name)
    if (cell?.kind === 'given') return this.given(cell)
    if (cell?.kind !== 'result')
      return html`<p class="small">${cell ? stepsWords.notReadable(labelOf(cell)) : stepsWords.missing(name)}</p>`
    const outcome = view.sheet.outcome(cell.id)
    // Only numbers can be measured.
    if (outcome.state === 'value' && outcome.type.kind !== 'number')
      return html`<div class="row"><span class="what">${labelOf(cell)}</span>${figureOf(outcome)}</div>`
    return this.measured(cell, outcome)
  }
}
