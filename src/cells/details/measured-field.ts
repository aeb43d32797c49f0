import { css, html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { type Change, type Outcome, type Result, withMeasured } from '../../worksheet/index.ts'
import { openedWords } from '../opened/words.ts'
import { labelOf, type ResultView } from '../shared/cell-view.ts'
import { errorMessage } from '../shared/error-message.ts'
import { initials, LONGEST_INITIALS, setInitials } from '../shared/initials.ts'
import { unitSuffix } from '../shared/unit-suffix.ts'
import { cellWords } from '../shared/words.ts'
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

/** The row under a result that it is measured in. */
export const measureRow = (cell: Result, outcome: Outcome, put: (text: string) => void): TemplateResult => html`
  <div class="below measure">
    <label for="measured" class="small">${cell.measure ?? detailsWords.measuredValue}</label>
    ${measuredField(cell, outcome, put)} ${initialsField()}
  </div>
`

/** What was measured, how far it is off, and what speaks against it. */
export function measuredNotes({ outcome, called }: ResultView): TemplateResult | typeof nothing {
  const measured = outcome.state === 'value' ? outcome.measured : undefined
  if (!measured) return nothing
  const { shown, difference, adjust, before, contradicts = [] } = measured
  return html`
    <span class="small seen">${detailsWords.measured(shown.text, difference, adjust)}</span>
    ${outcome.state === 'value' && outcome.by ? html`<span class="small">${cellWords.readAs(outcome.readAs ?? '', outcome.by)}</span>` : nothing}
    ${before ? html`<span class="small before">${detailsWords.measuredBefore(before.map(called))}</span>` : nothing}
    ${contradicts.map((text) => html`<span class="small before">${text}</span>`)}
  `
}

/** Words that confirm a measured value as it is, also after a change of what it depends on, or clear it. */
export const measuredWords = ({ cell, outcome }: ResultView, put: (text: string) => void): TemplateResult => html`
  ${outcome.state === 'value' && outcome.measured?.before ? html`<button type="button" class="word" @click=${() => put(cell.measured ?? '')}>${detailsWords.confirm}</button>` : nothing}
  <button type="button" class="word" @click=${() => put('')}>${detailsWords.clear}</button>
`
