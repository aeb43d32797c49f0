import { html, nothing, type TemplateResult } from 'lit'
import type { Cell } from '../../worksheet/index.ts'
import { ADDITIONS, type Addition } from '../common/additions.ts'
import { buildWords as words } from './words.ts'

const KINDS: Readonly<Record<Addition, string>> = words.kinds

const FIRST: readonly (readonly [Addition, string])[] = [
  ['given', words.aboutGiven],
  ['result', words.aboutResult],
  ['check', words.aboutCheck],
]

/** The kinds of cells to add at a place. */
export const additions = (className: string, add: (kind: Addition) => void): TemplateResult => html`
  <div class="presses add ${className}" role="group" aria-label=${words.addACell}>
    ${ADDITIONS.map(
      (kind) =>
        html`<button type="button" class="press" @click=${() => add(kind)}><span class="unseen">${words.add}</span>${KINDS[kind]}</button>`,
    )}
  </div>
`

/** The first cells of an empty sheet, each with what it is for. */
export function firstCells(cells: readonly Cell[], add: (kind: Addition) => void): TemplateResult | typeof nothing {
  const left = FIRST.filter(([kind]) => !cells.some((cell) => cell.kind === kind))
  if (cells.length >= FIRST.length || left.length === 0) return nothing
  return html`
    <div class="first">
      <p>${cells.length === 0 ? words.firstCells : words.nextCells}</p>
      ${left.map(
        ([kind, about]) => html`
          <button type="button" class="press" @click=${() => add(kind)}>
            <b>${KINDS[kind]}</b>, ${about}
          </button>
        `,
      )}
    </div>
  `
}
