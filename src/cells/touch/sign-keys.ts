import { css, html, type TemplateResult } from 'lit'
import { touchWords } from './words.ts'

/** Signs of the trade that the keys for numbers lack. */
const SIGNS: readonly (readonly [insert: string, spoken: string])[] = [
  ['f/', touchWords.spokenSigns.fNumber],
  ['1/', touchWords.spokenSigns.oneOver],
  ['×', touchWords.spokenSigns.times],
  ['±', touchWords.spokenSigns.plusOrMinus],
]

export const signKeysStyle = css`
  .signs {
    display: flex;
    gap: 8px;
  }
  .signs .press {
    justify-content: center;
    min-inline-size: 44px;
    padding-inline: 8px;
    font-size: 1.15rem;
  }
`

function insert(field: HTMLInputElement, text: string): void {
  const start = field.selectionStart ?? field.value.length
  field.setRangeText(text, start, field.selectionEnd ?? start, 'end')
  field.dispatchEvent(new Event('input', { bubbles: true, composed: true }))
  field.focus()
}

/** Buttons that insert a sign at the caret. The field stays focused, so the on-screen keyboard remains open. */
export const signKeys = (field: HTMLInputElement): TemplateResult => html`
  <div class="signs" role="group" aria-label=${touchWords.signs}>
    ${SIGNS.map(
      ([sign, spoken]) => html`
        <button
          type="button"
          class="press"
          aria-label=${touchWords.insertSign(sign, spoken)}
          @pointerdown=${(event: Event) => event.preventDefault()}
          @click=${() => insert(field, sign)}
        >${sign}</button>
      `,
    )}
  </div>
`
