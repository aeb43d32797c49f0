import { css, html, nothing, type TemplateResult } from 'lit'
import { applyFix, type Diagnostic } from '../../language/index.ts'
import { cellWords } from './words.ts'

export const errorMessageStyle = css`
  .problem {
    display: grid;
    gap: 0.4rem;
    padding-inline-start: 0.7rem;
    border-inline-start: 3px solid var(--ink);
    line-height: 1.35;
  }
  .problem + .problem {
    margin-block-start: 0.5rem;
  }
  .problem code {
    font-family: var(--mono);
    font-size: 0.92rem;
    overflow-wrap: anywhere;
  }
  .problem mark {
    background: none;
    color: inherit;
    text-decoration: underline;
    text-decoration-style: wavy;
    text-decoration-thickness: 1.5px;
    text-underline-offset: 0.25em;
  }
`

/** Characters kept at each side of the faulty part; before it all, where they are fewer than twice as many. */
const KEPT = 24

/** The text with the faulty part marked; a long text is shortened around it. */
function excerpt(text: string, { from, to }: Diagnostic): TemplateResult | typeof nothing {
  const start = Math.max(0, Math.min(from, text.length))
  const end = Math.max(start, Math.min(to, text.length))
  if (end === start || (start === 0 && end === text.length)) return nothing
  const first = start > 2 * KEPT ? start - KEPT : 0
  const last = Math.min(text.length, end + KEPT)
  return html`<code aria-hidden="true">${first > 0 ? '…' : ''}${text.slice(first, start)}<mark>${text.slice(start, end)}</mark>${text.slice(end, last)}${last < text.length ? '…' : ''}</code>`
}

/** Shows what is wrong, where, and buttons for its fixes. */
export function errorMessage(
  text: string,
  diagnostics: readonly Diagnostic[],
  apply: (text: string) => void,
): TemplateResult[] {
  return diagnostics.map(
    (diagnostic) => html`
      <div class="problem">
        <p>${diagnostic.severity === 'warning' ? html`<b>${cellWords.caution}</b> ` : ''}${diagnostic.message}</p>
        ${excerpt(text, diagnostic)}
        ${
          diagnostic.fixes.length > 0
            ? html`<div class="presses">
                ${diagnostic.fixes.map(
                  (one) =>
                    html`<button type="button" class="press" @click=${() => apply(applyFix(text, one))}>${one.label}</button>`,
                )}
              </div>`
            : nothing
        }
      </div>
    `,
  )
}
