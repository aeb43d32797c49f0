import { html, nothing, type TemplateResult } from 'lit'
import type { TableState } from './table-rows.ts'
import { tableWords } from './words.ts'

/** The most omitted rows shown at a time. */
const MOST_SHOWN = 5

/** The rows left out of the formulas, each with its reason as a button that goes to the field. */
export function omittedRowsList(
  { leftOut, labels }: TableState,
  goTo: (row: number, column: number) => void,
): TemplateResult | typeof nothing {
  if (leftOut.length === 0) return nothing
  const more = leftOut.length - MOST_SHOWN
  return html`
    <div class="left">
      <p>${tableWords.omitted(leftOut.length)}</p>
      <ul class="list">
        ${leftOut
          .slice(0, MOST_SHOWN)
          .map(
            ({ row, column, message }) =>
              html`<li><button type="button" class="word says" @click=${() => goTo(row, column)}>${tableWords.omittedAt(row + 1, labels[column] as string, message)}</button></li>`,
          )}
      </ul>
      ${more > 0 ? html`<p class="small quiet">${tableWords.moreOmitted(more)}</p>` : nothing}
    </div>
  `
}
