import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { type ExampleOutcome, functionOutcomeOf, functionSignature } from '../../worksheet/analysis/function-outcome.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import type { FunctionCell } from '../../worksheet/index.ts'
import type { CellSignal, WideView } from '../shared/cell-view.ts'
import { checkSign, signStyle } from '../shared/check-sign.ts'
import { errorMessage, errorMessageStyle } from '../shared/error-message.ts'
import { headed } from '../style/headed.ts'
import { shared } from '../style/styles.ts'
import { functionWords as words } from './words.ts'

/** One worked example: the call, what it should give, and whether it does. */
export const exampleLine = ({ formula, gives, shown, passes, message }: ExampleOutcome): TemplateResult => html`
  <li class=${passes ? 'pass' : 'fail'}>
    ${checkSign(passes ? 'pass' : 'fail')}
    <span><code>${formula}</code> = ${gives}: ${passes ? words.isRight : words.isWrong(shown)}${message ? html` <span class="small">${message}</span>` : nothing}</span>
  </li>
`

export const exampleStyle = [
  signStyle,
  css`
    .examples {
      display: grid;
      gap: 0.3rem;
      margin: 0;
      padding: 0;
      list-style: none;
    }
    .examples li {
      display: flex;
      gap: 0.5rem;
      align-items: baseline;
    }
    code {
      font-family: var(--mono);
      overflow-wrap: anywhere;
    }
  `,
]

/** A function of the sheet's own: how it is called, its formula, and its examples. */
@customElement('function-cell')
export class FunctionCellView extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    headed,
    errorMessageStyle,
    exampleStyle,
    css`
      section {
        display: grid;
        gap: 0.5rem;
        padding-block: 0.6rem;
      }
    `,
  ]

  @property({ attribute: false }) view!: CellSignal<WideView<FunctionCell>>

  override render(): TemplateResult {
    const { cell, sheet } = this.view.get()
    const outcome = functionOutcomeOf(sheet.engine, cell.id)
    return html`
      <section aria-labelledby="title">
        <div class="head"><h3 id="title">${labelOf(cell)}</h3></div>
        ${cell.about ? html`<p>${cell.about}</p>` : nothing}
        <p><code>${functionSignature(cell)} = ${cell.formula ?? ''}</code></p>
        ${outcome && outcome.diagnostics.length > 0 ? errorMessage(cell.formula ?? '', outcome.diagnostics, () => {}) : nothing}
        ${
          outcome && outcome.examples.length > 0
            ? html`<ul class="examples" aria-label=${words.examples}>${outcome.examples.map(exampleLine)}</ul>`
            : nothing
        }
      </section>
    `
  }
}
