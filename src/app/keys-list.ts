import { css, html, type TemplateResult } from 'lit'
import { ticked } from '../cells/labelled.ts'
import { showSigns, signsShown } from '../cells/touch-row.ts'

export const keysStyle = css`
  .keys summary {
    display: flex;
    align-items: center;
    min-block-size: 44px;
    inline-size: fit-content;
    cursor: pointer;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.28em;
    list-style: none;
  }
  .keys summary::-webkit-details-marker {
    display: none;
  }
  .keys dl {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 0.35rem 1.4rem;
    padding-block: 0.4rem 0.8rem;
  }
  .keys dt {
    font-weight: 700;
  }
`

const KEYS: readonly (readonly [string, string])[] = [
  ['Ctrl Z', 'undoes the last change (Cmd Z on a Mac)'],
  ['Shift Ctrl Z', 'does it again'],
  ['Alt ↑, Alt ↓', 'moves a cell earlier or later, in Build'],
  ['Alt Enter', 'adds a cell below, in Build'],
  ['Alt Delete', 'removes a cell, in Build'],
  ['↑, ↓', 'goes from cell to cell, in Build'],
  ['Enter', 'opens a cell; in a formula, keeps it and leaves'],
  ['Escape', 'closes a cell; in a formula, puts back what was there'],
  ['Ctrl Space', 'in a formula, offers names, functions and units'],
]

/** The keys the sheet knows, and whether the trade's signs stand under the field in hand. */
export const keysList = (): TemplateResult => html`
  <details class="keys">
    <summary>Keys and signs</summary>
    <dl>${KEYS.map(([keys, does]) => html`<dt>${keys}</dt><dd>${does}</dd>`)}</dl>
    ${ticked('Show f/, 1/, × and ± to press under the field in hand', signsShown.get(), showSigns)}
  </details>
`
