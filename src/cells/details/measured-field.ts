import { css, html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { type Change, type Outcome, type Result, withMeasured } from '../../worksheet/index.ts'
import { openedWords } from '../opened/words.ts'
import { labelOf } from '../shared/cell-view.ts'
import { errorMessage } from '../shared/error-message.ts'
import { initials, LONGEST_INITIALS, setInitials } from '../shared/initials.ts'
import { unitSuffix } from '../shared/unit-suffix.ts'
import { detailsWords } from './words.ts'

/** The change that sets the measured value of a result, with the key that merges typing into one undo step. */
export const measuring = (cell: Result, text: string): readonly [change: Change, merge: string] => [
  { do: 'replace', cell: withMeasured(cell, text) },
  `measured:${cell.id}`,
]

/** The field for the measured value of a result, with its unit and the error of its text; `until` is in it before. */
export function measuredField(
  cell: Result,
  outcome: Outcome,
  put: (text: string) => void,
  until?: string,
): TemplateResult {
  const error = outcome.state === 'value' ? outcome.measuredAmiss : undefined
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
      aria-label=${openedWords.measured(labelOf(cell))}
      aria-invalid=${error !== undefined}
      placeholder=${until ?? nothing}
      .value=${live(cell.measured ?? '')}
      @input=${(event: Event) => put((event.target as HTMLInputElement).value)}
    >
    <span class="unit">${unitSuffix(cell.unit) || shown}</span>
    ${error ? html`<div class="below">${errorMessage(cell.measured ?? '', [error], put)}</div>` : nothing}
  `
}

export const initialsStyle = css`
  .initials {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 0.9rem;
  }
  .initials .field {
    inline-size: 6rem;
  }
`

/** The initials of who measures; empty, a measured value is saved without. */
export const initialsField = (): TemplateResult => html`
  <label class="below small initials">
    <span>${detailsWords.initials}</span>
    <input
      class="field"
      maxlength=${LONGEST_INITIALS}
      autocomplete="off"
      .value=${live(initials())}
      @change=${(event: Event) => setInitials((event.target as HTMLInputElement).value)}
    >
  </label>
`
