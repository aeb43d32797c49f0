import { html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { type Change, type Outcome, type Result, withMeasured } from '../../worksheet/index.ts'
import { labelOf } from './cell-view.ts'
import { errorMessage } from './error-message.ts'
import { unitSuffix } from './unit-suffix.ts'

/** The change, and the key under which typing is one step of undo. */
export const measuring = (cell: Result, text: string): readonly [change: Change, merge: string] => [
  { do: 'replace', cell: withMeasured(cell, text) },
  `measured:${cell.id}`,
]

/** The field that takes what was measured for a result, its unit, and what is wrong with what it holds. */
export function measuredField(cell: Result, outcome: Outcome, put: (text: string) => void): TemplateResult {
  const amiss = outcome.state === 'value' ? outcome.measuredAmiss : undefined
  const shown = outcome.state === 'value' ? outcome.shown.unit : ''
  return html`
    <input
      id="measured"
      class="field entry"
      type="text"
      inputmode="text"
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      aria-label="${labelOf(cell)}, measured"
      aria-invalid=${amiss !== undefined}
      .value=${live(cell.measured ?? '')}
      @input=${(event: Event) => put((event.target as HTMLInputElement).value)}
    >
    <span class="unit">${unitSuffix(cell.unit) || shown}</span>
    ${amiss ? html`<div class="below">${errorMessage(cell.measured ?? '', [amiss], put)}</div>` : nothing}
  `
}
