import { css, html, nothing, type TemplateResult } from 'lit'
import { buildWords as words } from './words.ts'

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

/** What can be done with the selected cells. */
export type ClipAct = 'copy' | 'lines' | 'cut' | 'paste' | 'remove' | 'all' | 'done'

/** A field to copy from or paste into, for browsers that deny pages the clipboard. */
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

/** How many cells are selected, what can be done with them, and what was done last. */
export function clipBar({ count, said, byHand, act, pasted }: Bar): TemplateResult {
  const press = (name: ClipAct, text: string): TemplateResult =>
    html`<button type="button" class="word" @click=${() => act(name)}>${text}</button>`
  const shown = count > 0 || said !== '' || byHand !== undefined
  return html`
    <div class=${shown ? 'clip' : ''} role="group" aria-label=${words.selection}>
      <p class="small" role="status">${said}</p>
      ${byHand ? handField(byHand, pasted) : nothing}
      ${
        shown
          ? html`<div class="words">
              ${count > 0 ? html`<b>${words.selected(count)}</b> ${press('copy', words.copy)} ${press('lines', words.copyLines)} ${press('cut', words.cut)}` : nothing}
              ${press('paste', count > 0 ? words.pasteBelow : words.pasteCells)}
              ${count > 0 ? html`${press('remove', words.remove)} ${press('all', words.selectAll)}` : nothing}
              ${press('done', words.done)}
            </div>`
          : nothing
      }
    </div>
  `
}

function handField(byHand: ByHand, pasted: (text: string) => void): TemplateResult {
  const copying = byHand.for === 'copy'
  return html`
    <label class="by-hand">
      <span class="small">${copying ? words.copyByHand : words.pasteByHand}</span>
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
