import { signal } from '@lit-labs/signals'
import { css, html, type TemplateResult } from 'lit'
import { cellWords } from './words.ts'

/** Signs of the trade that are hard to reach on an on-screen keyboard. */
const SIGNS: readonly (readonly [insert: string, spoken: string])[] = [
  ['f/', cellWords.spokenSigns.fNumber],
  ['1/', cellWords.spokenSigns.oneOver],
  ['×', cellWords.spokenSigns.times],
  ['±', cellWords.spokenSigns.plusOrMinus],
]

const KEY = 'evenfield-signs'

const initiallyShown = (): boolean => {
  try {
    const stored = localStorage.getItem(KEY)
    if (stored !== null) return stored === 'yes'
  } catch {
    // Without storage the default applies.
  }
  return matchMedia('(pointer: coarse)').matches
}

/** Whether the signs are shown under the focused field; by default only on touch screens. */
export const signsShown = signal(initiallyShown())

export function showSigns(show: boolean): void {
  signsShown.set(show)
  try {
    localStorage.setItem(KEY, show ? 'yes' : 'no')
  } catch {
    // Without storage the choice lasts for this visit.
  }
}

export const touchRowStyle = css`
  .signs {
    display: flex;
    justify-content: flex-end;
    gap: 0.5rem;
  }
  .signs .press {
    justify-content: center;
    min-inline-size: 3.2rem;
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
export const touchRow = (field: () => HTMLInputElement | null): TemplateResult => html`
  <div class="signs" role="group" aria-label=${cellWords.signs}>
    ${SIGNS.map(
      ([sign, spoken]) => html`
        <button
          type="button"
          class="press"
          aria-label=${cellWords.insertSign(sign, spoken)}
          @pointerdown=${(event: Event) => event.preventDefault()}
          @click=${() => {
            const target = field()
            if (target) insert(target, sign)
          }}
        >${sign}</button>
      `,
    )}
  </div>
`
