import { signal } from '@lit-labs/signals'
import { css, html, type TemplateResult } from 'lit'

/** The trade's signs that an on-screen keyboard hides. */
const SIGNS: readonly (readonly [insert: string, spoken: string])[] = [
  ['f/', 'f-number'],
  ['1/', 'one over'],
  ['×', 'times'],
  ['±', 'plus or minus'],
]

const KEY = 'evenfield-signs'

const wanted = (): boolean => {
  try {
    const kept = localStorage.getItem(KEY)
    if (kept !== null) return kept === 'yes'
  } catch {
    // As for a browser that never chose.
  }
  return matchMedia('(pointer: coarse)').matches
}

/** Whether the signs stand under the field in hand: at first where a finger does the pointing. */
export const signsShown = signal(wanted())

export function showSigns(show: boolean): void {
  signsShown.set(show)
  try {
    localStorage.setItem(KEY, show ? 'yes' : 'no')
  } catch {
    // It holds for this visit.
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

/** Buttons that put a sign at the caret. The field keeps the focus, so the on-screen keyboard stays. */
export const touchRow = (field: () => HTMLInputElement | null): TemplateResult => html`
  <div class="signs" role="group" aria-label="Signs to put in">
    ${SIGNS.map(
      ([sign, spoken]) => html`
        <button
          type="button"
          class="press"
          aria-label=${`Put in ${sign}, ${spoken}`}
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
