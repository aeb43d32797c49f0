import { css, html, nothing, type TemplateResult } from 'lit'
import { cellsText } from '../common/words.ts'

export const clipBarStyle = css`
  .clip {
    position: sticky;
    inset-block-end: 0;
    z-index: 2;
    margin-inline: -0.9rem;
    padding-inline: 0.9rem;
    padding-block: 0.3rem;
    background: var(--sheet);
    border-block-start: 2px solid var(--ink);
  }
  .clip .words {
    align-items: center;
  }
  .clip .by-hand {
    display: grid;
    gap: 0.3rem;
    padding-block: 0.3rem;
    max-inline-size: 44rem;
  }
  .clip textarea.field {
    max-block-size: 9rem;
    field-sizing: fixed;
  }
`

/** What may be done with the cells selected. */
export type ClipAct = 'copy' | 'cut' | 'paste' | 'remove' | 'all' | 'done'

/** Where the browser lets no page at the clipboard, a field stands in: to copy from, or to paste into. */
export interface ByHand {
  readonly for: 'copy' | 'paste'
  readonly text: string
}

interface Bar {
  readonly count: number
  readonly said: string
  readonly byHand: ByHand | undefined
  readonly act: (act: ClipAct) => void
  readonly pasted: (text: string) => void
}

/** How many cells are selected and what may be done with them; what was done last. */
export function clipBar({ count, said, byHand, act, pasted }: Bar): TemplateResult {
  const word = (name: ClipAct, text: string): TemplateResult =>
    html`<button type="button" class="word" @click=${() => act(name)}>${text}</button>`
  const shown = count > 0 || said !== '' || byHand !== undefined
  return html`
    <div class=${shown ? 'clip' : ''} role="group" aria-label="Cells selected">
      <p class="small" role="status">${said}</p>
      ${byHand ? handField(byHand, pasted) : nothing}
      ${
        shown
          ? html`<div class="words">
              ${count > 0 ? html`<b>${capital(cellsText(count))} selected</b> ${word('copy', 'Copy')} ${word('cut', 'Cut')}` : nothing}
              ${word('paste', count > 0 ? 'Paste below' : 'Paste cells')}
              ${count > 0 ? html`${word('remove', 'Remove')} ${word('all', 'Select all')}` : nothing}
              ${word('done', 'Done')}
            </div>`
          : nothing
      }
    </div>
  `
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

function handField(byHand: ByHand, pasted: (text: string) => void): TemplateResult {
  const copying = byHand.for === 'copy'
  return html`
    <label class="by-hand">
      <span class="small">${
        copying
          ? 'This browser does not let a page copy. The text is marked: copy it from here.'
          : 'Paste the cells here, as text: they are put into the sheet at once.'
      }</span>
      <textarea
        class="field mono"
        rows="2"
        spellcheck="false"
        ?readonly=${copying}
        .value=${byHand.text}
        @input=${(event: Event) => copying || pasted((event.target as HTMLTextAreaElement).value)}
      ></textarea>
    </label>
  `
}
